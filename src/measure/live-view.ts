import type { Deg, Ms, Px } from '../units.ts';
import type { MeasuredRep } from './set-result.ts';

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
}

/** Something that just happened in the set. */
export type SetEvent =
  | { readonly kind: 'ready' }
  | { readonly kind: 'rep'; readonly rep: MeasuredRep }
  | { readonly kind: 'lost' }
  | { readonly kind: 'found' }
  /** A hand was raised, and held up, while the set ran: the person wants to say something. */
  | { readonly kind: 'hand' }
  | { readonly kind: 'ended'; readonly why: 'left' | 'target-reached' };
