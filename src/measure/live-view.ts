import type { GlideCycle, GlidePattern } from '../reps/glide-coordination.ts';
import type { Deg, Ms, Px } from '../units.ts';
import type { GlideStop, MeasuredRep } from './set-result.ts';
import type { StickersSeen } from './stickers-seen.ts';

/** What to change before a set can start, most urgent first. */
export type ViewAdvice =
  | 'nobody'
  | 'leg-hidden'
  | 'too-near'
  | 'too-far'
  | 'not-side-on'
  | 'wrong-leg'
  | 'too-dark'
  | 'not-sitting'
  | 'not-lying'
  | 'not-standing'
  /** Nerve glide: the leg lies flat, or is already above its limit. */
  | 'leg-not-held'
  /** Nerve glide: the leg that is held up is not the one asked for. */
  | 'other-leg-up'
  | 'leg-too-high'
  /** Stickers: not all of them are seen, or the foot is too small in the picture. */
  | 'stickers-missing'
  | 'stickers-small'
  | 'hold-still';

/** Where a set stands: looking for the right posture; still and ready, counting; or the leg was lost for a moment. */
export type SetPhase = 'setting-up' | 'counting' | 'lost' | 'ended';

export interface PicturePoint {
  readonly x: Px;
  readonly y: Px;
}

/** The near leg in the upright picture, for drawing; null when not seen. */
export interface LegDrawing {
  readonly hip: PicturePoint;
  readonly knee: PicturePoint;
  readonly ankle: PicturePoint;
  readonly heel: PicturePoint;
  readonly toe: PicturePoint;
}

/** A nerve glide now. */
export interface LiveGlide {
  /** The head's lift from where it rests; null: not seen. */
  readonly headDeg: Deg | null;
  /** How high the leg is held, from the horizontal; null: not seen. */
  readonly elevationDeg: Deg | null;
  /** Not to be gone above; null before the set has begun without a marked one. */
  readonly limitDeg: Deg | null;
  /** What the newest cycle was; null before the first. */
  readonly pattern: GlidePattern | null;
}

/** What moves too little or is not seen, so that nothing can be said of the two together. */
export type GlideTrouble = 'head-still' | 'foot-still' | 'head-hidden' | 'foot-hidden' | 'head-seldom';

/** What a screen shows of the set at this frame. Causal: it may lag and differ a little from the finished result. */
export interface LiveView {
  readonly phase: SetPhase;
  /** The joint's angle now; null when not measured. */
  readonly angleDeg: Deg | null;
  /** The joint's angle at rest, before the movement under way; null while nothing is counted. */
  readonly restDeg: Deg | null;
  /** Where symptoms were told to begin; null: they were not, or the angle is not known. */
  readonly onsetDeg: Deg | null;
  readonly count: number;
  readonly partialCount: number;
  /** For how long the movement under way has been held near its top; null: none is. */
  readonly heldMs: Ms | null;
  readonly advice: readonly ViewAdvice[];
  readonly leg: LegDrawing | null;
  /** Only of a set by stickers: where they are, for drawing; null when none was seen. */
  readonly stickers?: StickersSeen | null;
  /** Null for the other exercises. */
  readonly glide: LiveGlide | null;
}

/** Something that just happened in the set. */
export type SetEvent =
  | { readonly kind: 'ready' }
  | { readonly kind: 'rep'; readonly rep: MeasuredRep }
  | { readonly kind: 'lost' }
  | { readonly kind: 'found' }
  /** A hand was raised, and held up, while the set ran: the person wants to say something. */
  | { readonly kind: 'hand' }
  /** A cycle of a nerve glide is over, as far as can be told live. */
  | { readonly kind: 'glide'; readonly cycle: GlideCycle }
  /** Two cycles in a row were the wrong way round. Not told again before it has been right, and never twice within half a minute. */
  | { readonly kind: 'glide-wrong' }
  /** Two cycles in a row could not be judged. As seldom. */
  | { readonly kind: 'glide-trouble'; readonly what: GlideTrouble }
  | { readonly kind: 'ended'; readonly why: 'left' | 'target-reached' | GlideStop };
