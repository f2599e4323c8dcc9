import { deg, degOfRad, radOfDeg, unwrappedNear } from '../units.ts';
import { AnchorChain } from './anchor-chain.ts';
import { outlineAfter, type Place, placeAfter, pointAfter, type Step } from './place.ts';
import type { PlaneMotion } from './plane-motion.ts';
import { type Anchor, type Expectation, likeness, type Match, match, restAnchor } from './segment-anchor.ts';
import type { ExpectedJoint, SegmentHints, SegmentSighting } from './segment-hints.ts';
import { type Capsule, outermost, type Point, type SegmentShape, shapeDirection, shapeLength } from './segment-shape.ts';
import type { Sight } from './sight.ts';

/** A new anchor is only made where the landmarks see the turn within this share of their trust. Chosen. */
const ANCHOR_TRUST_SHARE = 0.3;
/** Below this correlation the segment was not found. Chosen: other parts of a picture reach 0.4 by chance, the segment itself seldom falls under 0.7. */
const FOUND_ZNCC = 0.7;
/** The same within AS_EXPECTED_DEG of where motion, neighbour or landmarks expect it. Chosen: dim, noisy and half-covered segments. */
const EXPECTED_ZNCC = 0.5;
const AS_EXPECTED_DEG = 8;
/** From here on a match is taken without trying another outline. Chosen. */
const SURE_ZNCC = 0.9;

/**
 * Standard deviations of what is expected: the joint, as a share of the segment's length, where the neighbour's own motion carries it and where only
 * landmarks or the last velocity tell; the turn about the guess; the size (perspective, turning to the camera). Chosen; 0.03 for the joint did worse.
 */
const JOINT_SD_SHARE = 0.05;
const LOOSE_JOINT_SD_SHARE = 0.12;
const TURN_SD_DEG = 8;
const LOG_SCALE_SD = 0.04;
/** A joint seen this far from where it should be, as a share of the segment's length, may be a landmark's slip. Chosen. */
const JUMP_SHARE = 0.2;
/** Share of a turn that shading, flesh and links between anchors put on its error. Measured on clips with truth: 2 to 5 % short or long. */
const MODEL_SE_SHARE = 0.03;

/** Turns tried to either side when no guess shows the segment. Chosen. */
const SWEEP_DEG = 24;
const SWEEP_STEP_DEG = 3;
/** A segment lost for this long is looked for where the landmarks see it, not where it was, and only every so often. Chosen. */
const STALE_MS = 300;
const RETRY_MS = 100;
/** The landmarks may contradict a match for this long; then it is given up as a wrong one. Chosen: longer than a landmark glitch. */
const CONTRADICTED_MS = 300;

/** How a segment is followed. */
interface Start {
  /** The turn to count on from. */
  readonly baseDeg: number;
  /** Part of a leg that is held still beside the other one: a sure match outweighs what the landmarks say, which may be of the other leg. */
  readonly held: boolean;
}

/** Follows one segment from its rest picture on. */
export class SegmentTracker {
  readonly rest: SegmentShape;
  private readonly baseDeg: number;
  private readonly held: boolean;
  private readonly anchors: AnchorChain;
  private outlineUsed: number;
  private last: Place;
  private before: { readonly place: Place; readonly stepMs: number } | null = null;
  private lastMs: number;
  private triedMs: number;
  private agrees = true;
  private agreedMs: number;

  private constructor(first: Anchor, rest: SegmentShape, { baseDeg, held }: Start, tMs: number) {
    this.rest = rest;
    this.baseDeg = baseDeg;
    this.held = held;
    this.anchors = new AnchorChain(first);
    this.outlineUsed = first.patches.findIndex((p) => p !== null);
    this.last = first.place;
    this.lastMs = tMs;
    this.triedMs = tMs;
    this.agreedMs = tMs;
  }

  /**
   * Takes the rest picture.
   * @param rest where the landmarks see the segment in it
   * @returns null when the segment is too small or has no texture
   */
  static start(sight: Sight, rest: SegmentShape, start: Start, tMs: number): SegmentTracker | null {
    const first = restAnchor(sight, rest);
    return first && new SegmentTracker(first, rest, start, tMs);
  }

  /** Where it was in the rest picture. */
  get first(): Place {
    return this.anchors.first.place;
  }

  /** Where it was last found. */
  get place(): Place {
    return this.last;
  }

  /** The last step; null before there is one. */
  get step(): Step | null {
    return this.before && { from: this.before.place, to: this.last };
  }

  /** The camera has jumped: everything was where the picture has now taken it, and moves on as it did. */
  carry(camera: PlaneMotion): void {
    this.last = placeAfter(this.last, camera);
    this.before = this.before && { ...this.before, place: placeAfter(this.before.place, camera) };
  }

  /** What a crop must contain: the outline where it was, where it will be if it goes on as it went, and where the landmarks see it. */
  outline(tMs: number, seen: SegmentShape | null): readonly Capsule[] {
    if (seen && this.stale(tMs)) return outermost(seen);
    const own = [this.last, this.expected(tMs)].flatMap((to) => outlineAfter(outermost(this.rest), { from: this.first, to }));
    return seen ? [...own, ...outermost(seen)] : own;
  }

  /** How far the landmarks have turned since the set began, the full turns counted as the picture has it. */
  turnSeen(seen: SegmentShape): number {
    return this.baseDeg + this.ownTurnSeen(seen);
  }

  /** Finds the segment in the next picture; null when it is not found. */
  find(sight: Sight, tMs: number, { seen, joint, carrierTurnDeg }: SegmentHints): SegmentSighting | null {
    const lost = this.stale(tMs);
    if (lost && (!seen || tMs - this.triedMs < RETRY_MS)) return null;
    this.triedMs = tMs;
    const expected = this.expected(tMs);
    const seenTurn = seen ? this.ownTurnSeen(seen) : null;
    const turns = lost ? [] : [expected.turnDeg, this.last.turnDeg];
    if (!lost && carrierTurnDeg !== null) turns.push(this.last.turnDeg + carrierTurnDeg);
    if (seenTurn !== null && (lost || !this.held)) turns.push(seenTurn);
    const own = { ...pointAfter(this.rest.joint, { from: this.first, to: expected }), sure: false };
    // Landmarks jump for a frame now and then; the segment's own motion stands beside them.
    const jumped = joint && !joint.sure && Math.hypot(joint.x - own.x, joint.y - own.y) > JUMP_SHARE * shapeLength(this.rest);
    const joints = !joint ? [own] : (jumped || (this.held && !joint.sure)) && !lost ? [joint, own] : [joint];
    const middle = this.held && !lost ? expected.turnDeg : (seenTurn ?? expected.turnDeg);
    const found = this.look(turns, middle, joints, sight);
    if (!found) return null;
    const apart = seenTurn === null ? 0 : Math.abs(found.place.turnDeg - seenTurn);
    // Frames without landmarks don't speak for a match: what the last ones said stands.
    if (seenTurn !== null) this.agrees = apart <= this.rest.trustDeg;
    if (this.agrees || (this.held && found.alignment.keptZncc >= SURE_ZNCC)) this.agreedMs = tMs;
    else if (tMs - this.agreedMs > CONTRADICTED_MS) return null;
    this.moveTo(found, tMs);
    if (apart <= ANCHOR_TRUST_SHARE * this.rest.trustDeg) this.anchors.extend(found, this.rest, sight);
    const { rotationSeDeg, keptZncc } = found.alignment;
    return {
      turnDeg: deg(this.baseDeg + found.place.turnDeg),
      seDeg: deg(Math.hypot(rotationSeDeg, MODEL_SE_SHARE * found.place.turnDeg)),
      zncc: keptZncc,
    };
  }

  /** The last outline from the likeliest turn, then the others, then a sweep about `middle`: at most three alignments. */
  private look(turns: readonly number[], middle: number, joints: readonly ExpectedJoint[], sight: Sight): Match | null {
    const tried = (outline: number, from: readonly number[]): Match | null => {
      const m = this.matchFrom(from, joints, outline, sight);
      if (!m) return null;
      const asExpected = turns.some((t) => Math.abs(m.place.turnDeg - t) <= AS_EXPECTED_DEG);
      return m.alignment.keptZncc >= (asExpected ? EXPECTED_ZNCC : FOUND_ZNCC) ? m : null;
    };
    let found = tried(this.outlineUsed, turns);
    for (let outline = 0; outline < this.rest.outlines.length; outline++) {
      if (found && found.alignment.keptZncc >= SURE_ZNCC) return found;
      if (outline !== this.outlineUsed) found = better(found, tried(outline, turns));
    }
    if (found) return found;
    const swept: number[] = [];
    for (let d = -SWEEP_DEG; d <= SWEEP_DEG; d += SWEEP_STEP_DEG) swept.push(middle + d);
    return tried(this.outlineUsed, swept);
  }

  /** The match from the likeliest of several turns about several joints. */
  private matchFrom(turns: readonly number[], joints: readonly ExpectedJoint[], outline: number, sight: Sight): Match | null {
    let most = Number.NEGATIVE_INFINITY;
    let best: { readonly place: Place; readonly anchor: Anchor; readonly joint: ExpectedJoint } | null = null;
    for (const joint of joints) {
      for (const turn of turns) {
        const place = this.hanging(turn, joint);
        const anchor = this.anchors.nearest(turn);
        const score = likeness(anchor, outline, place, sight);
        if (score > most) {
          most = score;
          best = { place, anchor, joint };
        }
      }
    }
    if (!best) return null;
    const was = pointAfter(this.rest.joint, { from: this.first, to: best.anchor.place });
    const expectation: Expectation = {
      joint: best.joint,
      jointSdPx: shapeLength(this.rest) * (best.joint.sure ? JOINT_SD_SHARE : LOOSE_JOINT_SD_SHARE),
      turnSdDeg: TURN_SD_DEG,
      logScaleSd: LOG_SCALE_SD,
    };
    return match(best.anchor, outline, best.place, was, expectation, sight);
  }

  private moveTo({ place, anchor, outline }: Match, tMs: number): void {
    const stepMs = tMs - this.lastMs;
    this.before = stepMs > 0 && !this.stale(tMs) ? { place: this.last, stepMs } : null;
    this.last = place;
    this.lastMs = tMs;
    this.anchors.use(anchor);
    this.outlineUsed = outline;
  }

  private stale(tMs: number): boolean {
    return tMs - this.lastMs > STALE_MS;
  }

  /** Constant velocity from the last two sightings, over at most twice the last step. */
  private expected(tMs: number): Place {
    const { last, before } = this;
    const stepMs = tMs - this.lastMs;
    if (!before || stepMs <= 0) return last;
    const share = Math.min(2, stepMs / before.stepMs);
    return {
      turnDeg: last.turnDeg + share * (last.turnDeg - before.place.turnDeg),
      scale: last.scale,
      x: last.x + share * (last.x - before.place.x),
      y: last.y + share * (last.y - before.place.y),
    };
  }

  private ownTurnSeen(seen: SegmentShape): number {
    const raw = degOfRad(shapeDirection(seen) - shapeDirection(this.rest));
    return unwrappedNear(raw, this.last.turnDeg);
  }

  /** The place with a given turn whose joint lies at `joint`. */
  private hanging(turnDeg: number, joint: Point): Place {
    const { scale } = this.last;
    const angle = radOfDeg(deg(turnDeg));
    const dx = scale * (this.first.x - this.rest.joint.x);
    const dy = scale * (this.first.y - this.rest.joint.y);
    return {
      turnDeg,
      scale,
      x: joint.x + Math.cos(angle) * dx - Math.sin(angle) * dy,
      y: joint.y + Math.sin(angle) * dx + Math.cos(angle) * dy,
    };
  }
}

const better = (a: Match | null, b: Match | null): Match | null =>
  !a || (b && b.alignment.keptZncc > a.alignment.keptZncc) ? b : a;
