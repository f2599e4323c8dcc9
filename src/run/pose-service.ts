import type { BetweenFrame } from '../capture/between-frames.ts';
import type { Picture, QuarterTurn } from '../capture/frame.ts';
import { type Luma, readLuma } from '../capture/luma.ts';
import { contextOf, scratchCanvas } from '../capture/scratch-canvas.ts';
import { type CameraWatch, startCameraWatch } from '../flow/camera-motion.ts';
import type { Segment } from '../flow/leg-motion.ts';
import { type LegTracker, startLegTracker } from '../flow/leg-tracker.ts';
import type { Observation } from '../measure/observation.ts';
import { type LegsSeen, nameHeldLeg } from '../pose/held-leg-names.ts';
import { type Landmarker, type LandmarkerError, loadLandmarker } from '../pose/landmarker.ts';
import type { PoseFrame, Side } from '../pose/landmarks.ts';
import type { Delegate } from '../pose/model.ts';
import { type PoseTracker, type PoseView, startTracker } from '../pose/tracker.ts';
import { ok, type Result } from '../result.ts';
import { type Ms, ms } from '../units.ts';

/** What the worker must know of a set before its first frame. */
export interface PoseTask extends PoseView {
  readonly segments: readonly Segment[];
  /** Whether the leg is held still beside the other one. */
  readonly held: boolean;
}

export interface PoseLoad {
  readonly wasmBase: string;
  readonly bundle: Uint8Array;
  readonly delegate: Delegate;
}

/** Brightness is read from every n-th pixel; neighbours tell the same. */
const BRIGHTNESS_STEP = 97;

function brightnessOf({ data }: Luma): number {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < data.length; i += BRIGHTNESS_STEP) {
    sum += data[i] ?? 0;
    count++;
  }
  return count === 0 ? 0 : sum / count;
}

/** The pose model and the picture's motion behind one door: everything that needs pixels. Lives in the worker. */
export class PoseService {
  private landmarker: Landmarker | null = null;
  private tracker: PoseTracker | null = null;
  private legs: LegTracker | null = null;
  private camera: CameraWatch | null = null;
  private segments: readonly Segment[] = [];
  /** Whose leg is held up beside the other one; null: no leg is. */
  private heldSide: Side | null = null;
  private legsSeen: LegsSeen | null = null;

  here(): true {
    return true;
  }

  /** Loads the model; must succeed before anything else is asked. */
  async load({ wasmBase, bundle, delegate }: PoseLoad): Promise<Result<null, LandmarkerError>> {
    this.landmarker?.close();
    this.landmarker = null;
    const loaded = await loadLandmarker(wasmBase, bundle, delegate);
    if (!loaded.ok) return loaded;
    this.landmarker = loaded.value;
    return ok(null);
  }

  /** Starts a set: forgets the person of the one before. */
  async begin({ segments, held, ...view }: PoseTask): Promise<void> {
    const landmarker = this.ready();
    await landmarker.forget();
    this.tracker = startTracker(landmarker, view);
    this.legs = startLegTracker(segments, view.side, held);
    this.camera = startCameraWatch();
    this.segments = segments;
    this.heldSide = held ? view.side : null;
    this.legsSeen = null;
  }

  /**
   * Follows the leg in pictures which the pose model does not get: those since the frame before, asked for before the next one.
   * @returns one observation for each in which the whole leg was followed, in order of time
   */
  follow(between: readonly BetweenFrame[]): readonly Observation[] {
    const { legs, camera: watch } = this;
    if (!legs || !watch) throw new Error('follow requires a set that has begun, got none');
    return between.flatMap((picture) => this.followIn(picture, legs, watch));
  }

  /** Looks at the next frame of the set. Takes over `image` and closes it. */
  async observe(image: Picture, turn: QuarterTurn, tMs: Ms): Promise<Observation> {
    try {
      const { tracker, legs, camera: watch } = this;
      if (!tracker || !legs || !watch) throw new Error('observe requires a set that has begun, got none');
      const luma = await readLuma(image, turn);
      const { landmarks, sure } = this.named((await tracker.observe(image, turn, tMs)).landmarks, tMs);
      const camera = watch.observe(luma, landmarks, tMs);
      const motion = legs.observe(luma, sure ? landmarks : null, tMs, camera);
      return { tMs, landmarks, motion, camera, brightness: brightnessOf(luma) };
    } finally {
      image.close();
    }
  }

  /** Milliseconds the model takes for one picture, the fastest of `rounds` after a first one that only warms up. */
  time(picture: ImageBitmap, rounds: number): Ms {
    const landmarker = this.ready();
    const canvas = scratchCanvas(picture.width, picture.height);
    contextOf(canvas, { alpha: false }).drawImage(picture, 0, 0);
    picture.close();
    let best = Number.POSITIVE_INFINITY;
    for (let i = 0; i <= rounds; i++) {
      const from = performance.now();
      landmarker.detect(canvas, ms(i + 1), 0, canvas);
      if (i > 0) best = Math.min(best, performance.now() - from);
    }
    return ms(best);
  }

  /** The points with the legs' names put right where one leg is held up. */
  private named(
    landmarks: PoseFrame['landmarks'],
    tMs: Ms,
  ): { readonly landmarks: PoseFrame['landmarks']; readonly sure: boolean } {
    if (!landmarks || !this.heldSide) return { landmarks, sure: true };
    const named = nameHeldLeg(this.legsSeen, landmarks, this.heldSide, tMs);
    this.legsSeen = named.seen;
    return named;
  }

  /** A picture that tells nothing without the pose model is as one that never came. */
  private followIn({ tMs, luma }: BetweenFrame, legs: LegTracker, watch: CameraWatch): readonly Observation[] {
    const camera = watch.observe(luma, null, tMs);
    const motion = legs.observe(luma, null, tMs, camera);
    const whole = this.segments.every((segment) => motion[segment] !== null);
    return whole ? [{ tMs, landmarks: null, motion, camera, brightness: brightnessOf(luma) }] : [];
  }

  private ready(): Landmarker {
    if (!this.landmarker) throw new Error('PoseService requires a loaded model, got none');
    return this.landmarker;
  }
}
