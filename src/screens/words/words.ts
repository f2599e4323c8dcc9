import type { Beat } from '../../dose/pace.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import type { GlideTrouble, SetEvent, ViewAdvice } from '../../measure/live-view.ts';
import type { QualityWarning, RepFlag } from '../../measure/set-result.ts';
import type { HeadTowards, Posture } from '../../pose/head-up.ts';
import type { Side } from '../../pose/landmarks.ts';
import type { PoseModel } from '../../pose/model.ts';
import type { SetSource } from '../../record/stored-set.ts';
import type { UnseenReason } from '../../stickers/unseen-reason.ts';
import type { MissingFeature, PictureKind, ProblemKind } from '../services.ts';
import type { Signal } from '../set/signal.ts';
import type { AwayWords } from './away-words.ts';
import type { CheckWords } from './check-words.ts';
import type { CompareWords } from './compare-words.ts';
import type { DayWords } from './day-words.ts';
import type { DeskWords } from './desk-words.ts';
import type { FeelWords } from './feel-words.ts';
import type { HandOverWords } from './hand-over-words.ts';
import type { KeptWords } from './kept-words.ts';
import type { LockWords } from './lock-words.ts';
import type { PeopleWords } from './people-words.ts';
import type { PlanWords } from './plan-words.ts';
import type { PrescribeWords } from './prescribe-words.ts';
import type { ProgressWords } from './progress-words.ts';
import type { RecountWords } from './recount-words.ts';
import type { ReportWords } from './report-words.ts';
import type { ReviewWords } from './review-words.ts';

/** What went wrong, and what to do about it. `detail` is a technical word, such as a codec's name. */
export interface ProblemWords {
  readonly title: string;
  readonly todo: string;
}

export interface NamedWords {
  readonly name: string;
  readonly about: string;
}

/** Everything the screens say, in one language. A missing entry is a type error. */
export interface Words {
  /** BCP 47 tag, for dates, numbers and voices. */
  readonly locale: string;
  readonly app: {
    readonly name: string;
    readonly staysHere: string;
    readonly back: string;
    readonly loading: string;
    readonly notFound: string;
    readonly language: string;
  };
  readonly start: {
    /** Over what only a therapist needs. */
    readonly therapist: string;
    readonly today: string;
    readonly todayAbout: string;
    readonly title: string;
    readonly lead: string;
    readonly ways: string;
    readonly sources: Record<PictureKind, NamedWords>;
    readonly sets: string;
    readonly countOf: (count: number, target: number | null) => string;
    readonly noSets: string;
    readonly damaged: (n: number) => string;
    readonly showAll: (n: number) => string;
    readonly interrupted: string;
    readonly running: string;
    readonly cautionTitle: string;
    readonly caution: readonly string[];
    readonly redFlagsLink: string;
  };
  readonly safety: {
    readonly title: string;
    readonly lead: string;
    readonly signs: readonly string[];
    readonly todo: string;
    readonly alsoTitle: string;
    readonly also: readonly string[];
    readonly limits: string;
  };
  readonly exercises: Record<
    ExerciseId,
    { readonly name: string; readonly plural: string; readonly about: string; readonly angle: string }
  >;
  readonly sides: Record<Side, { readonly leg: string; readonly legLower: string }>;
  /** Of exercises of the foot alone, in place of `sides`. */
  readonly feet: Words['sides'];
  readonly choose: {
    readonly title: string;
    readonly exercise: string;
    readonly side: string;
    readonly sideHint: string;
    readonly reps: string;
    readonly fewer: string;
    readonly moreReps: string;
    readonly camera: Record<Posture, string>;
    readonly cameraDrawing: Record<Posture, string>;
    readonly distance: Record<Posture, string>;
    readonly more: string;
    readonly kneeLimit: string;
    readonly kneeLimitLess: string;
    readonly kneeLimitMore: string;
    readonly model: string;
    readonly models: Record<PoseModel, NamedWords>;
    readonly head: string;
    readonly heads: Record<HeadTowards, string>;
    readonly cameraDevice: string;
    readonly anyCamera: string;
    readonly unnamedCamera: (n: number) => string;
    readonly filmed: string;
    readonly file: string;
    readonly otherFile: string;
    readonly noFile: string;
    readonly pickFile: string;
    readonly begin: Record<PictureKind, string>;
  };
  readonly set: {
    readonly title: string;
    readonly opening: string;
    readonly loadingModel: string;
    readonly looking: string;
    readonly ready: string;
    readonly readyVoice: string;
    /** What the one signal does from now on: a raised hand where there is a camera, the space bar where there are keys, else the button. */
    readonly signalVoice: Record<Signal, (camera: boolean, keys: boolean) => string>;
    /** The same beside the button that does it too. */
    readonly signalKeys: (camera: boolean) => string;
    readonly escapeKey: string;
    readonly handStopVoice: string;
    /** After a repetition that went past where symptoms begin. */
    readonly pastOnset: string;
    readonly beat: Record<Beat, string>;
    readonly beatWaits: string;
    readonly holdFor: (seconds: number, of: number) => string;
    readonly holdDone: string;
    readonly holdDoneVoice: string;
    readonly counting: string;
    /** The dose is done, but the person may still be moving. */
    readonly doseDone: (target: number) => string;
    readonly lost: string;
    readonly lostVoice: string;
    readonly foundVoice: string;
    /** The same where stickers are followed; `mixedUp`: something else was taken for one. */
    readonly stickers: Record<
      'looking' | 'kept' | 'mixedUp' | 'foundVoice' | 'picture' | 'left' | 'gap' | 'nothing' | 'stopped' | 'stoppedTodo',
      string
    >;
    /** Why stickers are not measured, and what to do. */
    readonly unseen: Record<UnseenReason, string>;
    readonly saving: string;
    readonly finishing: Record<Extract<SetEvent, { kind: 'ended' }>['why'], string>;
    readonly endedVoice: (count: number) => string;
    readonly advice: Record<ViewAdvice, string>;
    readonly count: string;
    readonly ofTarget: (target: number) => string;
    readonly small: (n: number) => string;
    readonly smallVoice: string;
    /** Nerve glide: said once after two cycles the wrong way round. */
    readonly glideWrong: string;
    readonly glideTrouble: Record<GlideTrouble, string>;
    readonly onset: string;
    readonly onsetMarked: string;
    readonly onsetVoice: string;
    readonly stop: string;
    /** Where the pictures of the recorded example's set come from. */
    readonly example: string;
    readonly cameraOn: string;
    readonly voiceOn: string;
    readonly voiceOff: string;
    readonly picture: string;
    readonly progress: string;
    readonly measured: (share: number) => string;
    readonly tryAgain: string;
    readonly seeKept: string;
    readonly storeTrouble: string;
  };
  readonly problems: Record<ProblemKind, (detail: string) => ProblemWords>;
  readonly result: {
    readonly title: string;
    readonly nothing: string;
    readonly nothingTodo: string;
    readonly reached: string;
    readonly range: (angle: string) => string;
    readonly noRange: string;
    readonly rangeValue: (deg: string, error: string) => string;
    readonly rangeHint: string;
    readonly upUsually: string;
    readonly upHint: (range: string) => string;
    readonly small: (n: number) => string;
    /** Of a set: how many are counted. */
    readonly countedLabel: string;
    readonly smallLabel: string;
    readonly smallHint: string;
    readonly changed: (measured: number, now: number) => string;
    readonly interrupted: string;
    readonly warningsTitle: string;
    readonly warnings: Record<QualityWarning, string>;
    readonly curveTitle: string;
    /** The curve's numbers as a file. */
    readonly curveFile: Record<'csv' | 'json', string>;
    readonly curveAlt: (complete: number, partial: number, widest: string | null) => string;
    readonly seconds: string;
    readonly legend: { readonly complete: string; readonly partial: string; readonly struck: string };
    readonly repsTitle: string;
    readonly repsHint: string;
    readonly columns: {
      readonly number: string;
      readonly range: string;
      readonly time: string;
      readonly state: string;
      readonly change: string;
    };
    readonly states: { readonly complete: string; readonly partial: string; readonly struck: string; readonly added: string };
    readonly flags: Record<RepFlag, string>;
    /** Where the foot stood at the peak: whole degrees, up positive. */
    readonly foot: (deg: number, error: number) => string;
    /** A heel stand's seconds up, and after how many it had sunk; null: it did not. */
    readonly up: (seconds: string, sankAfter: string | null) => string;
    readonly onset: (seconds: string, deg: string | null) => string;
    readonly strike: (n: number) => string;
    readonly restore: (n: number) => string;
    readonly strikeShort: string;
    readonly restoreShort: string;
    readonly addMissed: string;
    readonly notMeasured: string;
    readonly again: string;
    readonly home: string;
    readonly remove: string;
    readonly removeSure: string;
    readonly removeYes: string;
    readonly removeNo: string;
    readonly sources: Record<SetSource, string>;
  };
  readonly compare: CompareWords;
  readonly day: DayWords;
  readonly plan: PlanWords;
  readonly prescribe: PrescribeWords;
  readonly feel: FeelWords;
  readonly progress: ProgressWords;
  readonly report: ReportWords;
  readonly review: ReviewWords;
  readonly check: CheckWords;
  readonly handOver: HandOverWords;
  readonly desk: DeskWords;
  readonly lock: LockWords;
  readonly kept: KeptWords;
  readonly recount: RecountWords;
  readonly people: PeopleWords;
  readonly away: AwayWords;
  readonly unsupported: { readonly title: string; readonly todo: string; readonly features: Record<MissingFeature, string> };
}
