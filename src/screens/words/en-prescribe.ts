import type { NumberWords } from './plan-words.ts';
import type { PrescribeWords } from './prescribe-words.ts';

const days = (n: number) => (n === 1 ? 'one good day' : `${n} good days in a row`);
const points = (n: number) => `${n} ${n === 1 ? 'point' : 'points'}`;
const sets = (n: number) => `${n} ${n === 1 ? 'set' : 'sets'}`;
const times = (n: number) => `${n} ${n === 1 ? 'time' : 'times'}`;
const step = (what: string): NumberWords => ({
  label: `One step, ${what}`,
  fewer: `Smaller step, ${what}`,
  more: `Larger step, ${what}`,
});

/** Prescribing, in English. */
export const enPrescribe: PrescribeWords = {
  lead: 'Choose exercises. Each begins with its usual starting dose; any of it can be changed.',
  legs: {
    hint: 'For all the exercises you choose. Each of them can still be given another leg.',
    title: 'Legs',
    same: 'Same for both legs',
    apart: 'Different for each leg',
    keeps: (leg) => `“Same for both legs” keeps what the ${leg} has.`,
    copyTo: (leg) => `Copy to the ${leg}`,
    beyond: (n) =>
      n === 1
        ? 'One more line of this plan is not shown here. It stays as it is.'
        : `${n} more lines of this plan are not shown here. They stay as they are.`,
  },
  cautions: {
    title: (n) => `Cautions (${n})`,
    stays: 'It stays: who exercises alone must know when to stop.',
  },
  standing: { usual: 'Usual starting dose', moved: 'Usual dose, stepped since' },
  usualShort: 'usual starting dose',
  ofAll: 'With every exercise:',
  decided: { therapist: 'Set by the therapist', patient: 'Changed from the usual dose' },
  more: 'Days, rest, pace',
  rule: {
    after: (n) => `After ${days(n)}:`,
    next: 'When that is reached:',
    up: {
      setsADay: (by, most) => `${by} more ${by === 1 ? 'set' : 'sets'} a day, at most ${sets(most)} a day.`,
      repsASet: (by, most) => `${by} more ${by === 1 ? 'time' : 'times'} in a set, at most ${times(most)}.`,
      holdS: (by, most) => `held ${by} s longer, at most ${most} s.`,
    },
    never: 'The rule never raises this dose.',
    back: (rise, leastSets, leastReps) =>
      `Symptoms up by ${points(rise)} or more: one step back, at least ${sets(leastSets)} of ${leastReps}.`,
    settled: (n) => `Settled: next morning at most ${points(n)} above the time before the sets.`,
    afterFlare: (n) => `After a flare, a step up takes ${days(n)}.`,
    done: (percent) => `A day is done from ${percent}% of its repetitions on.`,
    fresh: (n) => `A good day counts for ${n} ${n === 1 ? 'day' : 'days'}.`,
    by: { setsADay: step('sets'), repsASet: step('times'), holdS: step('seconds of hold') },
    first: 'Do this first',
  },
  decides: {
    title: 'Who decides this plan?',
    patient: 'I do, for myself',
    therapist: 'A therapist',
    save: 'Save this plan',
    saveAndGive: 'Save and give it',
  },
};
