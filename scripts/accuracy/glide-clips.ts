import type { SetResult } from '../../src/measure/set-result.ts';
import { measureRecording } from '../../src/record/measure-recording.ts';
import type { Recording } from '../../src/record/recording.ts';
import { quantile } from '../../src/signal/median.ts';
import type { ClipWithTruth } from './clip-with-truth.ts';
import { matchedReps } from './matched-reps.ts';
import { plain, signed } from './numbers.ts';
import { table } from './table.ts';

/** How one clip of nerve glides came out. */
export interface GlideOutcome {
  readonly clip: ClipWithTruth;
  readonly result: SetResult;
}

export const glideOutcome = (clip: ClipWithTruth, recording: Recording): GlideOutcome => ({
  clip,
  result: measureRecording(recording),
});

/** A joint that moves by less than this is still, deg. */
const STILL_DEG = 2;
const NONE = '-';

const spread = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

/** What the clip truly shows: the head lifts as the foot points, or as it is pulled up; or one of the two does not move. */
function truePattern({ truth }: ClipWithTruth): 'slide' | 'tension' | 'unclear' {
  const necks = truth.frames.map((f) => f.neckDeg ?? 0);
  const feet = truth.frames.map((f) => f.ankleDeg);
  if (Math.min(spread(necks), spread(feet)) < STILL_DEG) return 'unclear';
  const mean = (values: readonly number[]) => values.reduce((sum, x) => sum + x, 0) / values.length;
  const [neck, foot] = [mean(necks), mean(feet)];
  return mean(necks.map((x, i) => (x - neck) * ((feet[i] ?? 0) - foot))) < 0 ? 'slide' : 'tension';
}

function row({ clip, result }: GlideOutcome, ownClips: ReadonlySet<string>): readonly string[] {
  const { glide } = result;
  const errors = matchedReps(result, clip).map((m) => m.rangeErrorDeg);
  const meanError = errors.reduce((sum, x) => sum + Math.abs(x), 0) / errors.length;
  const neck = spread(clip.truth.frames.map((f) => f.neckDeg ?? 0));
  const elevations = clip.truth.frames.map((f) => f.legElevationDeg);
  const held = glide?.legHeld;
  const still = spread(clip.truth.frames.map((f) => f.ankleDeg)) < STILL_DEG;
  return [
    `${clip.id}${ownClips.has(clip.id) ? '' : ' *'}${clip.truth.heldOut ? ' (held out)' : ''}`,
    truePattern(clip),
    glide?.pattern ?? NONE,
    String(clip.truth.reps.length),
    String(glide?.cycles.length ?? 0),
    `${result.count} of ${still ? 0 : clip.truth.reps.length}`,
    errors.length > 0 ? `${plain(meanError, 1)}, ${plain(Math.max(...errors.map(Math.abs)), 1)}` : NONE,
    plain(neck, 0),
    glide?.headRangeDeg == null ? NONE : signed(glide.headRangeDeg - neck, 1),
    held ? signed(held.medianDeg - (quantile(elevations, 0.5) ?? 0), 1) : NONE,
    held ? signed(held.highestDeg - Math.max(...elevations), 1) : NONE,
  ];
}

const HEADS = [
  'clip',
  'true pattern',
  'pattern',
  'true cycles',
  'cycles',
  'repetitions of the foot',
  'foot range: mean abs. error, worst',
  'true head range',
  'head range: error',
  'leg elevation: error of the median',
  'of the highest',
];

/** The clips of nerve glides as a table. */
export const glideClips = (outcomes: readonly GlideOutcome[], ownClips: ReadonlySet<string>): string =>
  table(
    HEADS,
    outcomes.map((outcome) => row(outcome, ownClips)),
  );
