import type { NumberWords, PlanWords } from './plan-words.ts';

/** A number whose two buttons take one off and put one on. */
const number = (label: string): NumberWords => ({ label, fewer: `Less: ${label}`, more: `More: ${label}` });

/** The plan and its editor, in English. */
export const enPlan: PlanWords = {
  title: 'Your plan',
  lead: 'Choose what your therapist showed you. The doses are the usual ones to begin with; your therapist may change each of them.',
  exercises: 'What do you do?',
  side: 'Which leg?',
  both: 'Both legs',
  basis: 'The doses offered are common practice, not tested in studies.',
  save: 'This is my plan',
  unsaved: 'Your changes from before are here. They are not saved yet.',
  dropUnsaved: 'Drop these changes',
  none: 'Choose at least one exercise.',
  setsADay: (n) => (n === 1 ? 'one set a day' : `${n} sets a day`),
  change: 'Change the dose',
  fields: {
    setsADay: number('Sets a day'),
    repsASet: number('Times in a set'),
    holdS: number('Hold, seconds'),
    tempoS: number('Seconds for each'),
    restS: number('Rest between sets, seconds'),
    daysAWeek: number('Days a week'),
    symptomLimit: number('No set when symptoms are above'),
    fromDeg: number('From, degrees'),
    toDeg: number('To, degrees'),
  },
  tempo: 'How fast?',
  ownPace: 'At my own pace',
  paced: 'With a beat',
  target: 'How far?',
  targets: { full: 'As far as it goes without pain', symptoms: 'Until symptoms start', range: 'To a range' },
  rule: 'When to do more or less',
  thresholds: {
    clearRise: number('Symptoms up by this much: step back'),
    settledWithin: number('Next morning still settled: up to this much more'),
    goodDays: number('Good days before a step up'),
    goodDaysAfterFlare: number('Good days before a step up, after a flare'),
    doneShare: number('Done from this share on, percent'),
    freshDays: number('A good day counts for this many days'),
  },
  checks: 'Checks of strength',
  checksEvery: number('Repeat after this many days'),
  limits: 'Never less than, never more than',
  least: 'at least',
  most: 'at most',
  badLimits: 'The dose must lie between its least and its most.',
  badRange: 'The range must end above where it begins.',
};
