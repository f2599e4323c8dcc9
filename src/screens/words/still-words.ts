import type { ExerciseId } from '../../exercises/exercise.ts';
import type { PointName } from '../../measure/angle-of-points.ts';
import type { ViewAdvice } from '../../measure/live-view.ts';
import type { FootHeld, MarkMethod, MarkZero } from '../../symptoms/angle-mark.ts';

/** Texts of measuring in pictures that stand still, and of what is noted and kept with a mark. */
export interface StillWords {
  readonly foot: string;
  readonly footHeld: Record<FootHeld, string>;
  readonly place: string;
  /** @param name null: not noted */
  readonly placeIs: (name: string | null) => string;
  readonly notNoted: string;
  readonly points: Record<PointName, string>;
  readonly pointAt: (name: string, x: number, y: number) => string;
  readonly handlesHint: string;
  readonly correct: string;
  readonly correctDone: string;
  readonly modelPoints: string;
  readonly closer: string;
  readonly whole: string;
  readonly plusMinus: (deg: string) => string;
  readonly liveError: (deg: string) => string;
  readonly how: Record<MarkMethod, string>;
  readonly byHand: string;
  readonly fromRest: string;
  readonly ownAngle: Record<ExerciseId, string>;
  readonly zeroShort: Record<MarkZero, string>;
  readonly knee: (deg: string) => string;
  readonly noAngle: string;
  readonly marked: (what: string, deg: string) => string;
  readonly freeze: string;
  readonly frozenAbout: string;
  readonly thaw: string;
  readonly files: Record<'film' | 'photo', Record<'none' | 'pick' | 'other' | 'about', string>>;
  readonly lookAtPhoto: string;
  readonly measuringFilm: string;
  readonly openingFilm: string;
  readonly cancel: string;
  readonly previous: string;
  readonly next: string;
  readonly scrub: string;
  readonly position: (seconds: string, n: number, of: number) => string;
  readonly stepKeys: string;
  readonly peak: (n: number) => string;
  readonly unfollowed: string;
  readonly unfollowedAbout: string;
  readonly lookingAtPhoto: string;
  readonly photoZero: string;
  readonly viewTitle: string;
  readonly view: Record<ViewAdvice, string>;
  readonly each: string;
  readonly remove: string;
  readonly keepAbout: string;
  readonly keep: (n: number) => string;
  readonly kept: (n: number) => string;
  readonly isKept: string;
  readonly staysHere: string;
}
