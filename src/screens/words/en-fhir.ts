import type { FhirWords } from './fhir-words.ts';

/** The file for a clinic's system, in English. */
export const enFhir: FhirWords = {
  title: 'For a clinic’s system (FHIR)',
  lead: 'A file that other health software can read: the plan, the sets and what was told in the weeks chosen above. What was invented to try the program is left out. Nothing is sent.',
  whose: 'Whose it says it is',
  named: {
    code: { name: 'A code only', about: 'No name. What was typed, such as notes, is left out.' },
    name: { name: 'A name', about: 'With the name below, and with what was typed.' },
  },
  name: 'Name, as the clinic knows it',
  save: (weeks) => `Save ${weeks} weeks as FHIR`,
  saved: (sets, entries) =>
    `The file has ${sets === 1 ? 'one set' : `${sets} sets`} and ${entries === 1 ? 'one entry' : `${entries} entries`} of the diary.`,
  notWhole: (n) =>
    n === 1
      ? 'One record with typed text is in it without that text.'
      : `${n} records with typed text are in it without that text.`,
};
