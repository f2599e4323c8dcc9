import type { PictureSize } from '../capture/frame.ts';
import type { AnyExerciseId } from '../exercises/exercise.ts';
import type { Side } from '../pose/landmarks.ts';
import type { GlideCoordination } from '../reps/glide-coordination.ts';
import type { Deg, Ms, Ratio } from '../units.ts';

/** What may be said of a repetition besides its numbers; fixed words that also stand in files. */
export type RepFlag =
  | 'partial'
  | 'knee-bent'
  | 'tracking-gap'
  /** Still under way when the set ended. */
  | 'unfinished'
  | 'past-onset'
  | 'sinking'
  | 'doubtful'
  | 'toes-along'
  /** The live count had it otherwise: counted and now kept apart, or counted only now. */
  | 'recounted';

/** From which source a number came: the model's points, the picture's own motion, both joined, or stickers on the skin. */
export type AngleSource = 'landmarks' | 'flow' | 'fused' | 'stickers';

/** One measured movement. Times on the source's clock; angles of the exercise's joint. */
export interface MeasuredRep {
  /** 1, 2, 3 ... over complete and partial movements alike, in order of time. */
  readonly number: number;
  readonly startMs: Ms;
  readonly peakMs: Ms;
  readonly endMs: Ms;
  readonly startDeg: Deg;
  readonly peakDeg: Deg;
  /** How far it moved: the peak against the rest around it, never negative. */
  readonly rangeDeg: Deg;
  /** How long it was held at the top: without the time it took to come to rest there and to leave (`reps/hold-time.ts`). */
  readonly holdMs: Ms;
  /** Counts as a repetition; otherwise it is kept apart as partial. */
  readonly complete: boolean;
  readonly flags: readonly RepFlag[];
  /** Half the width of the 95 % interval of `rangeDeg`. */
  readonly uncertaintyDeg: Deg;
  readonly source: AngleSource;
  /** Leg raise: ankle dorsiflexion at the peak, from the landmarks alone; null for the other exercises, when not seen, and while the set runs. */
  readonly footDeg: Deg | null;
  /** Half the width of the 95 % interval of `footDeg`; null with it. */
  readonly footUncertaintyDeg: Deg | null;
  /** Heel stand: how long the forefoot was off the floor; null for the other exercises and while the set runs. */
  readonly upMs: Ms | null;
  /** Heel stand: after how long it had sunk by a third of its height while still up; null when it did not. */
  readonly sankAfterMs: Ms | null;
}

/** Why a set's numbers deserve less trust, in the order in which it is said. */
export type QualityWarning =
  | 'camera-too-turned'
  | 'camera-turned'
  | 'foot-small'
  | 'leg-hidden'
  | 'often-lost'
  | 'low-frame-rate'
  | 'little-texture'
  | 'points-jumped'
  | 'far-leg'
  | 'other-leg-up'
  | 'camera-moved'
  | 'sticker-lost'
  | 'sticker-jumped'
  | 'sticker-glare'
  | 'sticker-like-surround';

/** The angle through the set after smoothing without lag: what the result's curve is drawn from. Null where nothing was measured. */
export interface AngleCurve {
  readonly tMs: readonly Ms[];
  readonly angleDeg: readonly (Deg | null)[];
}

/** Where symptoms began in a set, as the person told it. */
export interface Onset {
  /** When it was told: a moment after it was felt. */
  readonly tMs: Ms;
  /** The exercise's angle at that moment; null when the leg was not measured then. */
  readonly angleDeg: Deg | null;
}

/** Why a set of glides was ended before its dose was done: the leg had risen above its limit, or the person said that symptoms rise. */
export type GlideStop = 'above-limit' | 'symptoms';

/** How high the leg was held through a set of glides, hip to ankle from the horizontal. */
export interface LegHeld {
  /** Median over the set. */
  readonly medianDeg: Deg;
  readonly highestDeg: Deg;
  /** Half the width of the 95 % interval. */
  readonly uncertaintyDeg: Deg;
  /** Not to be gone above. */
  readonly limitDeg: Deg;
  /** `marked`: where a therapist marked that symptoms begin. `held`: where the leg was held when the set began. */
  readonly limitFrom: 'marked' | 'held';
}

/** Nerve glide: what foot and head did together. */
export interface GlideResult extends GlideCoordination {
  /** Share of all cycles that slide; null without a cycle. */
  readonly slideShare: Ratio | null;
  /** Medians over the cycles; null where not seen. */
  readonly footRangeDeg: Deg | null;
  readonly headRangeDeg: Deg | null;
  /** Half the width of the 95 % interval of `headRangeDeg`; null with it. */
  readonly headUncertaintyDeg: Deg | null;
  /** Null when the leg was not seen from hip to ankle. */
  readonly legHeld: LegHeld | null;
  /** Null: the set was not ended early by either. */
  readonly stopped: GlideStop | null;
}

/** The finished set. The same whether frames came live, from a file or from a recording. */
export interface SetResult {
  readonly exercise: AnyExerciseId;
  readonly side: Side;
  readonly size: PictureSize;
  readonly frames: number;
  readonly framesUsed: number;
  readonly durationMs: Ms;
  readonly reps: readonly MeasuredRep[];
  readonly count: number;
  readonly partialCount: number;
  /** How many were counted while the set ran and are not found in the whole of it; left out: none. */
  readonly notFound?: number;
  /** Over complete repetitions; null when there are none. */
  readonly summary: { readonly medianPeakDeg: Deg; readonly medianRangeDeg: Deg; readonly uncertaintyDeg: Deg } | null;
  /** Leg raise: the knee bend from which a repetition is flagged; null for the other exercises. */
  readonly kneeLimitDeg: Deg | null;
  /** Where symptoms began; null when nobody said so. */
  readonly onset: Onset | null;
  /** Nerve glide; null for the other exercises. */
  readonly glide: GlideResult | null;
  readonly quality: { readonly cameraTurnDeg: Deg | null; readonly warnings: readonly QualityWarning[] };
  readonly curve: AngleCurve;
}
