import { EXERCISE_IDS, type ExerciseId } from '../../src/exercises/exercise.ts';
import type { PoseModel } from '../../src/pose/model.ts';
import { agreementOf } from './agreement.ts';
import type { ClipOutcome } from './clip-outcome.ts';
import { EXERCISE_NAME } from './exercise-name.ts';
import { heldOutPart } from './held-out.ts';
import type { MatchedRep } from './matched-reps.ts';
import { plain, signed } from './numbers.ts';
import { repeatabilityPart } from './repeatability.ts';
import { table } from './table.ts';
import { SOURCES } from './three-sources.ts';
import { variety } from './variety.ts';

/** What the report is made from. */
export interface AccuracyFindings {
  readonly outcomes: readonly ClipOutcome[];
  readonly models: readonly PoseModel[];
  /** Name and version of what the figures depend on. */
  readonly versions: readonly string[];
  /** Ids of the clips that are part of the project. */
  readonly ownClips: ReadonlySet<string>;
}

/** The file of an exercise's plot, seen from the report. */
export const plotFile = (exercise: ExerciseId): string => `accuracy/${exercise}.svg`;
export const plotTitle = (exercise: ExerciseId): string => `Range of ${EXERCISE_NAME[exercise]}: measured minus true`;

const NONE = '-';

const limitsIn = (limits: readonly [number, number] | null | undefined): string =>
  limits ? `${signed(limits[0], 1)} to ${signed(limits[1], 1)}` : NONE;

const errors = (matched: readonly MatchedRep[]) => ({
  range: agreementOf(matched.map((m) => m.rangeErrorDeg)),
  peak: agreementOf(matched.map((m) => m.peakErrorDeg)),
});

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

function summaryRow(exercise: ExerciseId, model: PoseModel, source: string, outcomes: readonly ClipOutcome[]): readonly string[] {
  const matched = outcomes.flatMap((o) => o.matched);
  const { range, peak } = errors(matched);
  const exact = outcomes.filter((o) => o.count === o.trueCount).length;
  const partialsExact = outcomes.filter((o) => o.partialCount === o.truePartialCount).length;
  const held = matched.filter((m) => m.held).length;
  return [
    EXERCISE_NAME[exercise],
    model,
    source,
    String(sum(outcomes.map((o) => o.trueCount))),
    String(sum(outcomes.map((o) => Math.abs(o.count - o.trueCount)))),
    `${exact} of ${outcomes.length}`,
    `${partialsExact} of ${outcomes.length}`,
    range ? plain(range.meanAbsolute, 2) : NONE,
    range ? signed(range.bias) : NONE,
    range ? plain(range.worst, 1) : NONE,
    limitsIn(range?.limits),
    peak ? signed(peak.bias, 1) : NONE,
    limitsIn(peak?.limits),
    range ? `${plain((100 * held) / matched.length, 0)} % of ${matched.length}` : NONE,
  ];
}

const SUMMARY_HEADS = [
  'exercise',
  'model',
  'source',
  'true count',
  'count error, summed',
  'clips counted exactly',
  'partials exact',
  'range: mean abs. error',
  'bias',
  'worst',
  '95 % limits',
  'peak: bias',
  '95 % limits',
  'intervals that hold the truth',
];

function clipRow({ clip, source, model, ...o }: ClipOutcome, ownClips: ReadonlySet<string>, several: boolean): readonly string[] {
  const { range } = errors(o.matched);
  const held = o.matched.filter((m) => m.held).length;
  return [
    ownClips.has(clip.id) ? clip.id : `${clip.id} *`,
    ...(several ? [model] : []),
    source,
    String(o.trueCount),
    String(o.count),
    String(o.truePartialCount),
    String(o.partialCount),
    range ? plain(range.meanAbsolute, 2) : NONE,
    range ? signed(range.bias) : NONE,
    range ? plain(range.worst, 1) : NONE,
    limitsIn(range?.limits),
    `${held} of ${o.matched.length}`,
  ];
}

function clipHeads(several: boolean): readonly string[] {
  const counts = ['true count', 'count', 'true partial', 'partial'];
  const range = ['mean abs. error', 'bias', 'worst', '95 % limits', 'intervals hold'];
  return ['clip', ...(several ? ['model'] : []), 'source', ...counts, ...range];
}

/** The whole report as Markdown. It names no date and no machine: the same clips, code and browser give the same text. */
export function accuracyReport({ outcomes: all, models, versions, ownClips }: AccuracyFindings): string {
  const outcomes = all.filter((o) => o.clip.truth.repeats === undefined);
  const parts = [heldOutPart(outcomes), repeatabilityPart(all)].filter((part) => part !== '').join('\n');
  const several = models.length > 1;
  const exercises = EXERCISE_IDS.filter((id) => outcomes.some((o) => o.exercise === id));
  const summary = exercises.flatMap((exercise) =>
    models.flatMap((model) =>
      SOURCES.map((source) => {
        const own = outcomes.filter((o) => o.exercise === exercise && o.model === model && o.source === source);
        return summaryRow(exercise, model, source, own);
      }),
    ),
  );
  const others = outcomes.some((o) => !ownClips.has(o.clip.id));
  return `# How good the numbers are

Made by \`npm run accuracy\`: every clip with known truth is watched by the real pose model in a real browser, and measured with one set of parameters for
all. Degrees throughout; errors are measured minus true, one for each complete repetition, matched to the true one by overlap in time.
Made with ${versions.join(', ')}.

${table(SUMMARY_HEADS, summary)}

- **landmarks**: the pose model's points alone, as if the picture's motion were not there.
- **flow**: the picture's own motion alone. A frame in which it was not followed counts as not seen; the landmarks give only the level at rest.
- **fused**: what the product reports. The motion gives the movement, landmarks the level, and the movement where the motion was lost.

Range is how far a repetition moves, and is what to trust. A peak also holds the level, which comes from landmarks: an ankle's can be off by several
degrees throughout a set. A leg raise's peak is counted from the leg's own rest, as it is reported. "95 % limits" are Bland and Altman's (bias -+ 1.96 standard
deviations); repetitions of one clip resemble each other, so they are narrower than over as many people. The last column tells how often the interval
reported with a range holds the truth: below 95 % it is too narrow, and landmarks alone are given wide ones. Count errors are summed without their
sign, so that a missed repetition does not make up for one too many.

${exercises.map((id) => `![${plotTitle(id)}](${plotFile(id)})`).join('\n\n')}

One mark a repetition${several ? ` (model ${models[0]})` : ''}: dots as reported (fused), crosses from landmarks alone. The lines are those of the dots. Flow alone, where it
differs from fused at all, is in the tables.

${parts}
## Clip by clip

Errors are of the range. Partial movements are those the clip was made with and does not count.${others ? ' Clips marked * are not part of the project; they were rendered in the same way for this table.' : ''}

${table(
  clipHeads(several),
  outcomes.map((outcome) => clipRow(outcome, ownClips, several)),
)}

## What was varied, and what was not

${variety(outcomes.map((o) => o.clip))}

The constants of the measurement were chosen while looking at these clips; others will do somewhat worse.

Not tested: real patients, or any real person. Rendered bodies are simpler than people: skin, cloth and movement are smoother, muscles do not bulge, shadows are
plainer, and so is the camera's noise. Good figures here are necessary, not sufficient.
`;
}
