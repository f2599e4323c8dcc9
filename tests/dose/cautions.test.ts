import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ALWAYS_SAID, CHOSEN_CAUTIONS, cautionsOf, withCaution } from '../../src/dose/cautions.ts';
import { CAUTION_IDS } from '../../src/dose/prescribed-exercise.ts';
import { standingOfDose } from '../../src/dose/usual-dose.ts';
import { line } from './plan.ts';

const anyCautions = fc.array(fc.constantFrom(...CAUTION_IDS), { maxLength: 8 }).map((cautions) => ({ cautions }));

test('whatever is chosen or taken out, when to stop is said, first, and each caution once', () => {
  fc.assert(
    fc.property(anyCautions, fc.constantFrom(...CAUTION_IDS), fc.boolean(), (of, id, wanted) => {
      const cautions = withCaution(of, id, wanted);
      expect(cautions[0]).toBe(ALWAYS_SAID);
      expect(new Set(cautions).size).toBe(cautions.length);
      expect(cautions.includes(id)).toBe(wanted || id === ALWAYS_SAID);
      expect(cautionsOf({ cautions })).toEqual(cautions);
    }),
  );
});

test('every other caution can be put in and taken out', () => {
  for (const id of CHOSEN_CAUTIONS) {
    const without = withCaution({ cautions: CAUTION_IDS }, id, false);
    expect(without).not.toContain(id);
    expect(withCaution({ cautions: without }, id, true)).toEqual(CAUTION_IDS);
  }
});

test('a dose is the usual one as offered, moved when a step changed it, decided when somebody did', () => {
  const tap = line('foot-tap');
  expect(standingOfDose(tap)).toBe('usual');
  expect(standingOfDose({ ...tap, start: { ...tap.start, repsASet: 20 } })).toBe('moved');
  expect(standingOfDose({ ...tap, basis: 'therapist' })).toBe('decided');
});
