import type { CautionId, PrescribedExerciseId } from '../dose/prescribed-exercise.ts';
import type { AnyExerciseId } from '../exercises/exercise.ts';
import type { GlideStop, LegHeld, QualityWarning, RepFlag } from '../measure/set-result.ts';
import type { GlidePattern } from '../reps/glide-coordination.ts';
import type { AngleMark, AngleMarkFor, FootHeld, MarkMethod, MarkZero } from '../symptoms/angle-mark.ts';
import type { CheckIn } from '../symptoms/check-in.ts';
import type { NotAnswered } from '../symptoms/entry.ts';
import type { SymptomKind } from '../symptoms/felt.ts';
import type { BIG_TOE } from '../symptoms/self-check.ts';
import type { SymptomReport } from '../symptoms/symptom-report.ts';

type Shown<K extends string> = Readonly<Record<K, string>>;

/** What is done. */
export const EXERCISE_TERMS = {
  'foot-tap': 'Foot taps, seated',
  'leg-raise': 'Straight leg raises, lying',
  'nerve-glide': 'Nerve glides, lying',
  'toe-lift': 'Great-toe lifts, seated',
  'heel-stand': 'Standing on the heels',
  'knee-straighten': 'Knee straightening, seated',
  own: 'Exercise defined by a therapist',
} as const satisfies Shown<AnyExerciseId | PrescribedExerciseId>;

type SetCode = `${keyof typeof EXERCISE_TERMS}-set`;
const SET_TERMS = Object.fromEntries(
  Object.entries(EXERCISE_TERMS).map(([id, name]) => [`${id}-set`, `Set of one leg: ${name}; complete repetitions`]),
) as Shown<SetCode>;

/** What is measured or counted: codes of observations and of their components. */
const MEASURE_TERMS = {
  ...SET_TERMS,
  'repetition-range': 'Range of one repetition: peak against the rest around it',
  'median-range': 'Median range of the complete repetitions',
  'median-peak': 'Median angle at the peak of the complete repetitions',
  'median-hold': 'Median time held at the peak of the complete repetitions',
  'median-up': 'Median time with the forefoot off the floor',
  'range-error': 'Half the width of the 95 % interval of one repetition’s range',
  'partial-repetitions': 'Partial repetitions, not counted',
  'added-repetitions': 'Complete repetitions added by hand',
  'target-repetitions': 'Repetitions that the set was to have',
  duration: 'Duration of the measurement',
  'knee-limit': 'Knee bend from which a repetition is flagged',
  'camera-turn': 'How far the camera looked at the leg from aside, against square on',
  'glide-pattern': 'Nerve glide: how foot and head moved together through the set',
  'glide-cycles': 'Nerve glide: cycles seen',
  'glide-cycles-sliding': 'Nerve glide: cycles in which the head lifts as the foot points',
  'foot-range': 'Nerve glide: median range of the foot over the cycles',
  'head-range': 'Nerve glide: median range of the head over the cycles',
  'head-range-error': 'Half the width of the 95 % interval of the head’s range',
  'leg-held': 'Nerve glide: median elevation of the leg, hip to ankle from the horizontal',
  'leg-highest': 'Nerve glide: highest elevation of the leg',
  'leg-held-error': 'Half the width of the 95 % interval of the leg’s elevation',
  'leg-limit': 'Nerve glide: elevation of the leg not to be gone above',
  'glide-stop': 'Nerve glide: why the set was ended before its dose was done',
  exercise: 'Exercise in which it was measured',
  'set-state': 'How the set ended',
  warning: 'Why the numbers deserve less trust',
  'angle-at-symptom-onset': 'Angle where symptoms began',
  'angle-at-limit': 'Angle where the movement ended',
  'angle-error': 'Half the width of the 95 % interval of the angle',
  'onset-time': 'When symptoms were told to begin, on the clock of the pictures',
  'foot-held': 'How the foot was held',
  'symptom-place': 'Where the symptom was felt',
  zero: 'What the angle is measured from',
  trial: 'Which time it was taken in its session',
} as const;

type AngleCode = 'angle-at-symptom-onset' | 'angle-at-limit';
export const ANGLE_CODES = {
  'first-symptom': 'angle-at-symptom-onset',
  limit: 'angle-at-limit',
} as const satisfies Readonly<Record<AngleMarkFor, AngleCode>>;

/** How a number was come by. */
const METHOD_TERMS = {
  'camera-2d': 'Camera, angle in the picture: 2D, sagittal projection',
  'by-hand': 'Counted by the person, not measured',
  'by-metronome': 'Counted by a beat that the person followed, not measured',
  followed: 'From the smoothed course of the angle through a whole recording',
  landmarks: 'From the pose model’s points in one picture',
  corrected: 'From points that a hand set in one picture',
} as const satisfies Shown<MarkMethod | 'camera-2d' | 'by-hand' | 'by-metronome'>;

/** What is said of a repetition, a set or an angle besides its number. */
const REMARK_TERMS = {
  complete: 'Complete: counted',
  partial: 'Partial: not counted',
  struck: 'Struck out by hand: not counted',
  added: 'Added by hand: counted, not measured',
  'knee-bent': 'Knee bent further than the limit',
  'tracking-gap': 'The leg was lost for a while',
  unfinished: 'Under way when the set ended',
  'past-onset': 'Went on past where symptoms had begun',
  sinking: 'The forefoot sank while up',
  doubtful: 'Doubtful',
  'toes-along': 'The other toes lifted along',
  recounted: 'Judged otherwise while the set ran',
  finished: 'Ended as it should',
  interrupted: 'Broke off before it was over',
  slide: 'Slide: foot and head move so that the nerve slides',
  tension: 'Tension: foot and head pull at the nerve from both ends',
  unclear: 'Unclear: neither slide nor tension could be told',
  marked: 'Where a therapist marked that symptoms begin',
  held: 'Where the leg was held when the set began',
  'above-limit': 'The leg had risen above its limit',
  symptoms: 'The person said that symptoms rise',
  'camera-too-turned': 'Camera too far from square on',
  'camera-turned': 'Camera not square on',
  'foot-small': 'Foot small in the picture',
  'leg-hidden': 'Leg partly hidden',
  'often-lost': 'Leg often lost',
  'low-frame-rate': 'Few pictures a second',
  'little-texture': 'Little texture to follow',
  'points-jumped': 'Points of the pose model jumped',
  'far-leg': 'The leg may be the far one',
  'other-leg-up': 'The other leg was held up',
  'camera-moved': 'Camera moved',
  'sticker-lost': 'A sticker was lost for a while',
  'sticker-jumped': 'A sticker was taken for something else for a while',
  'sticker-glare': 'Light shone off a sticker for a while',
  'sticker-like-surround': 'A sticker lay beside something of its own colour for a while',
  'pulled-up': 'Foot pulled up',
  relaxed: 'Foot relaxed',
  pointed: 'Foot pointed',
  rest: 'From the rest in the same recording, in the direction of the movement',
  own: 'The joint’s own angle; of a raised leg from the horizontal',
} as const satisfies Shown<
  | RepFlag
  | GlidePattern
  | GlideStop
  | LegHeld['limitFrom']
  | QualityWarning
  | FootHeld
  | MarkZero
  | 'complete'
  | 'struck'
  | 'added'
  | 'finished'
  | 'interrupted'
>;

type Answered<T> = Exclude<T, NotAnswered>;
/** Answers to choose from; yes and no are FHIR's boolean. */
const ANSWER_TERMS = {
  none: 'None of them',
  pain: 'Pain',
  tingling: 'Tingling',
  numbness: 'Numbness',
  weakness: 'Weakness',
  nowhere: 'Nowhere',
  'before-set': 'Before a set',
  'after-set': 'After a set',
  'no-flare': 'Not stirred up',
  settled: 'Stirred up, settled by the morning',
  'not-settled': 'Stirred up, not settled',
  'as-before': 'As before',
  worse: 'Weaker than before',
  'cannot-lift': 'Cannot be lifted',
  'easily-pushed-down': 'Lifts, but is easily pushed down',
  'as-strong': 'As strong as the other side',
} as const satisfies Shown<
  | SymptomKind
  | 'none'
  | 'nowhere'
  | SymptomReport['moment']
  | Answered<CheckIn['afterwards'] | CheckIn['weakness']>
  | (typeof BIG_TOE)[number]
>;

/** What a line of a prescription says besides exercise, leg, dose and time. */
const ORDER_TERMS = {
  hold: 'Hold of each repetition',
  target: 'How far to move',
  tempo: 'Time for one repetition',
  'by-stickers': 'Measured through three stickers on the skin',
  rest: 'Least rest between two sets of one leg',
  spread: 'How the sets are spread',
  'days-a-week': 'Days a week',
  'symptom-limit': 'Symptom limit',
  progression: 'Limits of the dose and rule for its steps',
  'dose-step': 'Agreed change of the dose',
  'stop-if-worse': 'Caution: stop if it gets worse',
  'no-strong-pull': 'Caution: no strong pull',
  'up-to-symptoms': 'Caution: only up to where symptoms begin',
  'hold-on': 'Caution: hold on to something firm',
  'clear-floor': 'Caution: clear the floor',
  'keep-breathing': 'Caution: keep breathing',
} as const satisfies Shown<CautionId> & Shown<string>;

/** What a document holds. */
const RECORD_TERMS = {
  set: 'Record of Evenside: a measured set',
  edit: 'Record of Evenside: a change of a set by hand',
  entry: 'Record of Evenside: an entry of the diary',
} as const;

/** Where a record comes from. */
const ORIGIN_TERMS = { example: 'Invented to try the program; no record of a person' } as const satisfies Shown<
  Exclude<AngleMark['origin'], 'own'>
>;

/** The code systems of our own, but the body sites (`body-site.ts`), each code with its meaning. Codes are added, never changed. */
export const TERMS = {
  exercise: EXERCISE_TERMS,
  measure: MEASURE_TERMS,
  method: METHOD_TERMS,
  remark: REMARK_TERMS,
  answer: ANSWER_TERMS,
  order: ORDER_TERMS,
  record: RECORD_TERMS,
  origin: ORIGIN_TERMS,
} as const;
export type TermSystem = keyof typeof TERMS;
export type Term<S extends TermSystem> = keyof (typeof TERMS)[S] & string;
