import { median } from 'simple-statistics';
import type { Ms } from '../units.ts';
import { LANDMARK, type Landmark, type LandmarkName, landmark, type Side } from './landmarks.ts';
import { middleOf, raisedBy } from './raised-by.ts';

/** The legs must be this far apart for one of them to be the raised one, deg. Chosen. */
const APART_DEG = 10;
/** And so far, and nearly as far as they have been, for their lengths to be compared, deg and share. Chosen: points on their way from one leg to the other are on neither. */
const WELL_APART_DEG = 25;
const WELL_APART_SHARE = 0.8;
/**
 * The raised leg is the near one when it looks at least this large below the knee beside the resting one: what is nearer is larger. Measured on 34 rendered views, as
 * the geometric mean of the shank's and the heel's lengths: 1.02 to 1.36 with the near leg raised; 0.83 to 0.97 with the far one named as such, in 12 of 14. The shank alone does not tell: down to 0.91 with the near one.
 */
const NEAR_RATIO = 1;
/** So many comparisons tell, the latest ones count. Chosen. */
const LEAST_RATIOS = 3;
const MOST_RATIOS = 45;
/** Points nearer to the other leg than this share of how far apart both usually are, and by more than a held leg's points scatter, deg, lie between the two. Chosen. */
const OWN_SHARE = 0.8;
const SCATTER_DEG = 10;
/** How far apart the legs are is forgotten with this time constant, ms: a leg may be lowered. Chosen. */
const FORGETS_MS = 10_000;

/** How the legs of a person who holds one of them up have looked so far. */
export interface LegsSeen {
  readonly tMs: Ms;
  /** How far apart they were at most, lately, deg. */
  readonly apartDeg: number;
  /** Size of the raised leg below the knee over that of the resting one, where both were well apart; oldest first. */
  readonly ratios: readonly number[];
}

/** A frame's points with the legs' names put right. */
export interface NamedLegs {
  readonly seen: LegsSeen;
  readonly landmarks: readonly Landmark[];
  /** Whether the held leg's points lie on it: not when they are on their way to the other one, as the model's smoothing draws them. */
  readonly sure: boolean;
}

const PARTS = ['Knee', 'Ankle', 'Heel', 'Toe'] as const;

/**
 * The model sees both legs of a person who holds one up, but takes one for the other for seconds, most in dim light. The near leg's points are those of the raised one
 * as long as that is the nearer one by its length. Places and visibility are exchanged, depths stay: by them the names are known (`measure/near-leg.ts`).
 * @param side whose leg is held up, the one nearest the camera
 */
export function nameHeldLeg(before: LegsSeen | null, landmarks: readonly Landmark[], side: Side, tMs: Ms): NamedLegs {
  const other: Side = side === 'left' ? 'right' : 'left';
  const at = (of: Side, part: (typeof PARTS)[number]) => landmark(landmarks, `${of}${part}`);
  const hips = middleOf(landmark(landmarks, 'leftHip'), landmark(landmarks, 'rightHip'));
  const ahead = raisedBy(hips, at(side, 'Ankle')) - raisedBy(hips, at(other, 'Ankle'));
  const apart = Math.abs(ahead);
  const kept = before ? before.apartDeg * Math.exp(-Math.max(0, tMs - before.tMs) / FORGETS_MS) : 0;
  const apartDeg = Math.max(apart, kept);
  const toAnkle = (of: Side, part: 'Knee' | 'Heel') =>
    Math.hypot(at(of, part).x - at(of, 'Ankle').x, at(of, part).y - at(of, 'Ankle').y);
  const size = (of: Side) => Math.sqrt(toAnkle(of, 'Knee') * toAnkle(of, 'Heel'));
  const ratio = ahead > 0 ? size(side) / size(other) : size(other) / size(side);
  const tells = apart >= WELL_APART_DEG && apart >= WELL_APART_SHARE * apartDeg && Number.isFinite(ratio);
  const ratios = [...(before?.ratios ?? []), ...(tells ? [ratio] : [])].slice(-MOST_RATIOS);
  const nearUp = ratios.length >= LEAST_RATIOS && median([...ratios]) >= NEAR_RATIO;
  return {
    seen: { tMs, apartDeg, ratios },
    landmarks: ahead <= -APART_DEG && nearUp ? exchanged(landmarks) : landmarks,
    sure: apartDeg < WELL_APART_DEG || ((ahead > 0 || nearUp) && apart >= Math.min(OWN_SHARE * apartDeg, apartDeg - SCATTER_DEG)),
  };
}

/** Left and right leg the other way round, from the knee on. */
function exchanged(landmarks: readonly Landmark[]): readonly Landmark[] {
  const taken = new Map<number, Landmark>();
  for (const part of PARTS) {
    const names: readonly [LandmarkName, LandmarkName] = [`left${part}`, `right${part}`];
    for (const [to, from] of [names, [names[1], names[0]]] as const) {
      const { x, y, visibility } = landmark(landmarks, from);
      taken.set(LANDMARK[to], { x, y, visibility, z: landmark(landmarks, to).z });
    }
  }
  return landmarks.map((p, i) => taken.get(i) ?? p);
}
