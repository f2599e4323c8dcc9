import type { ObservationComponent } from '@medplum/fhirtypes';
import type { GlideResult } from '../measure/set-result.ts';
import { type EditedRep, editedReps } from '../record/rep-edit.ts';
import type { StoredSet } from '../record/stored-set.ts';
import { median } from '../signal/median.ts';
import { absent, concept } from './concept.ts';
import type { Naming } from './naming.ts';
import { quantity } from './quantity.ts';
import type { Term } from './terms.ts';

type Measure = Term<'measure'>;
type MeasuredRep = StoredSet['reps'][number];

/** The complete repetitions that were not struck out by hand: what the medians are made of. */
const countedReps = (set: StoredSet): readonly MeasuredRep[] =>
  editedReps(set).flatMap((each) => (each.kind === 'measured' && !each.struck && each.rep.complete ? [each.rep] : []));

const howMany = (set: StoredSet, is: (rep: EditedRep) => boolean): number => editedReps(set).filter(is).length;

/** Half the width of the 95 % interval of one repetition's range, degrees; null: none was counted. */
export const rangeErrorOf = (set: StoredSet): number | null =>
  median(countedReps(set).map(({ uncertaintyDeg }) => uncertaintyDeg));

/** One repetition: its range, and what is said of it. In the order of their numbers, those added by hand last. */
function repetition(naming: Naming, each: EditedRep): ObservationComponent {
  const remark = (code: Term<'remark'>) => concept(naming, 'remark', code);
  const code = (text: string) => concept(naming, 'measure', 'repetition-range', text);
  const struck = each.struck ? [remark('struck')] : [];
  if (each.kind === 'added')
    return { code: code('Repetition added by hand'), ...absent('not-performed'), interpretation: [remark('added'), ...struck] };
  const { number, complete, flags, rangeDeg } = each.rep;
  const others = flags.filter((flag) => flag !== 'partial').map(remark);
  return {
    code: code(`Repetition ${number}`),
    valueQuantity: quantity(rangeDeg, 'deg'),
    interpretation: [remark(complete ? 'complete' : 'partial'), ...others, ...struck],
  };
}

/** A value that a set should have: why not, when it was measured and not found. */
const should = (naming: Naming, code: Measure, value: number | null, unit: 'deg' | 'ms'): ObservationComponent => ({
  code: concept(naming, 'measure', code),
  ...(value === null ? absent('unknown') : { valueQuantity: quantity(value, unit) }),
});

/** A value that only some sets have. */
const mayHave = (
  naming: Naming,
  code: Measure,
  value: number | null | undefined,
  unit: Parameters<typeof quantity>[1],
): readonly ObservationComponent[] =>
  value === null || value === undefined ? [] : [{ code: concept(naming, 'measure', code), valueQuantity: quantity(value, unit) }];

/** What foot, head and leg did in a set of glides. */
function glideComponents(naming: Naming, glide: GlideResult): readonly ObservationComponent[] {
  const remarked = (code: Measure, remark: Term<'remark'>): ObservationComponent => ({
    code: concept(naming, 'measure', code),
    valueCodeableConcept: concept(naming, 'remark', remark),
  });
  const { legHeld, stopped, cycles } = glide;
  return [
    remarked('glide-pattern', glide.pattern),
    ...mayHave(naming, 'glide-cycles', cycles.length, '{cycle}'),
    ...mayHave(naming, 'glide-cycles-sliding', cycles.filter(({ pattern }) => pattern === 'slide').length, '{cycle}'),
    ...mayHave(naming, 'foot-range', glide.footRangeDeg, 'deg'),
    ...mayHave(naming, 'head-range', glide.headRangeDeg, 'deg'),
    ...mayHave(naming, 'head-range-error', glide.headUncertaintyDeg, 'deg'),
    ...mayHave(naming, 'leg-held', legHeld?.medianDeg, 'deg'),
    ...mayHave(naming, 'leg-highest', legHeld?.highestDeg, 'deg'),
    ...mayHave(naming, 'leg-held-error', legHeld?.uncertaintyDeg, 'deg'),
    ...(legHeld
      ? [
          {
            ...should(naming, 'leg-limit', legHeld.limitDeg, 'deg'),
            interpretation: [concept(naming, 'remark', legHeld.limitFrom)],
          },
        ]
      : []),
    ...(stopped ? [remarked('glide-stop', stopped)] : []),
  ];
}

/** All that is said of a measured set besides its count. A new value of `SetResult` is a line here, and its code one in `terms.ts`. */
export function setComponents(naming: Naming, set: StoredSet): ObservationComponent[] {
  const { result } = set;
  const medianOf = (of: (rep: MeasuredRep) => number | null) => median(countedReps(set).flatMap((rep) => of(rep) ?? []));
  const remarked = (code: Measure, remark: Term<'remark'>): ObservationComponent => ({
    code: concept(naming, 'measure', code),
    valueCodeableConcept: concept(naming, 'remark', remark),
  });
  return [
    should(
      naming,
      'median-range',
      medianOf((rep) => rep.rangeDeg),
      'deg',
    ),
    should(naming, 'range-error', rangeErrorOf(set), 'deg'),
    should(
      naming,
      'median-peak',
      medianOf((rep) => rep.peakDeg),
      'deg',
    ),
    should(
      naming,
      'median-hold',
      medianOf((rep) => rep.holdMs),
      'ms',
    ),
    ...mayHave(
      naming,
      'median-up',
      medianOf((rep) => rep.upMs),
      'ms',
    ),
    ...mayHave(
      naming,
      'partial-repetitions',
      howMany(set, (each) => each.kind === 'measured' && !each.rep.complete && !each.struck),
      '{repetition}',
    ),
    ...mayHave(
      naming,
      'added-repetitions',
      howMany(set, (each) => each.kind === 'added' && !each.struck),
      '{repetition}',
    ),
    ...mayHave(naming, 'target-repetitions', set.targetReps, '{repetition}'),
    ...mayHave(naming, 'duration', result?.durationMs, 'ms'),
    ...mayHave(naming, 'knee-limit', result?.kneeLimitDeg, 'deg'),
    ...mayHave(naming, 'camera-turn', result?.quality.cameraTurnDeg, 'deg'),
    ...(result?.glide ? glideComponents(naming, result.glide) : []),
    remarked('set-state', set.state === 'finished' ? 'finished' : 'interrupted'),
    ...(result?.quality.warnings ?? []).map((warning) => remarked('warning', warning)),
    ...editedReps(set).map((each) => repetition(naming, each)),
  ];
}
