import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { givenPlan, withoutName } from '../../src/dose/given-plan.ts';
import { PRESCRIBED_EXERCISE_IDS } from '../../src/dose/prescribed-exercise.ts';
import type { Prescription } from '../../src/dose/prescription.ts';
import { crc32 } from '../../src/record/crc32.ts';
import { PLAN_DICTIONARY } from '../../src/record/plan-dictionary.ts';
import { PLAN_LIMITS } from '../../src/record/plan-error.ts';
import { decodePlan, encodePlan, encodePlanCode } from '../../src/record/plan-transfer.ts';
import { line } from '../dose/plan.ts';
import { anyPrescription } from './any-prescription.ts';
import { bytesOf, code, file, plan } from './plan-codes.ts';
import { wentWell } from './went-well.ts';

/** Packed by other tools than ours. */
const VECTORS: { readonly document: { readonly plan: unknown }; readonly codes: Readonly<Record<string, string>> } = JSON.parse(
  readFileSync(join(import.meta.dirname, '..', 'vectors', 'plan-code.json'), 'utf8'),
);

describe('a plan on its way', () => {
  test('any valid plan survives file, link and code, with and without the name', () => {
    fc.assert(
      fc.property(anyPrescription, (any) => {
        const given = givenPlan(any);
        expect(wentWell(decodePlan(wentWell(encodePlan(any))))).toEqual(given);
        const named = wentWell(encodePlanCode(any, { named: true }));
        expect(wentWell(decodePlan(named))).toEqual(given);
        expect(wentWell(decodePlan(`https://example.org/evenside/#/take/${named}`))).toEqual(given);
        expect(wentWell(decodePlan(wentWell(encodePlanCode(any, { named: false }))))).toEqual(withoutName(given));
      }),
      { numRuns: 300 },
    );
  });

  test('a link is found in the text of a message, and stray space around a file does no harm', () => {
    expect(wentWell(decodePlan(`Your plan:\n http://127.0.0.1:8080/#/take/${code}\nSee you on Monday`))).toEqual(givenPlan(plan));
    expect(wentWell(decodePlan(`\uFEFF\n${file}\n\n`))).toEqual(givenPlan(plan));
  });

  test('all six exercises make a code of at most 400 characters, a file of at most 9,000', () => {
    expect(code.length).toBeLessThanOrEqual(400);
    expect(file.length).toBeLessThanOrEqual(9000);
  });

  test('two lines of one exercise, a leg each, come back as they were; of all six they make a code of at most 850 characters', () => {
    const items = PRESCRIBED_EXERCISE_IDS.flatMap((id, n) =>
      (['left', 'right'] as const).map((side, leg) => {
        const usual = line(id, { sides: [side], basis: 'therapist' }, 2 * n + leg + 1);
        return { ...usual, start: { ...usual.start, repsASet: usual.start.repsASet - leg }, symptomLimit: 5 - leg };
      }),
    );
    const parted = { ...plan, items };
    const found = wentWell(encodePlanCode(parted, { named: true }));
    expect(wentWell(decodePlan(found))).toEqual(givenPlan(parted));
    expect(wentWell(decodePlan(wentWell(encodePlan(parted))))).toEqual(givenPlan(parted));
    expect(found.length).toBeLessThanOrEqual(850);
  });

  test('says nothing of when it was taken on, and keeps when it was written', () => {
    const taken: Prescription = { ...plan, writtenAt: '2026-04-01T08:00:00.000Z' };
    const text = wentWell(encodePlan(taken));
    expect(text).not.toContain(taken.at);
    expect(Object.keys(JSON.parse(text).plan)).toEqual(['id', 'writtenAt', 'origin', 'by', 'revises', 'items', 'selfChecks']);
    expect(wentWell(decodePlan(text)).writtenAt).toBe(taken.writtenAt);
  });

  test('without its name a code does not hold it in any form', () => {
    const nameless = wentWell(encodePlanCode(plan, { named: false }));
    expect(wentWell(decodePlan(nameless)).by).toEqual({ role: 'therapist', name: '' });
    expect(nameless).toBe(
      wentWell(encodePlanCode({ ...plan, by: { role: 'therapist', name: 'Somebody Else' } }, { named: false })),
    );
  });

  test('a plan without a line, or with a name of a book’s length, is not given', () => {
    expect(encodePlan({ ...plan, items: [] })).toMatchObject({ error: { kind: 'plan-wrong', where: 'plan.items' } });
    const by = { role: 'therapist', name: 'x'.repeat(300) } as const;
    expect(encodePlanCode({ ...plan, by }, { named: true })).toMatchObject({ error: { where: 'plan.by.name' } });
    expect(encodePlanCode({ ...plan, by }, { named: false }).ok).toBe(true);
  });

  test('a plan that no link can hold says so', () => {
    const cautions = Array.from({ length: 200 }, () => 'hold-on' as const);
    const large = {
      ...plan,
      items: Array.from({ length: 60 }, (_, n) => line('foot-tap', { cautions: [...cautions, ...cautions] }, n + 1)),
    };
    expect(encodePlanCode(large, { named: true })).toMatchObject({
      error: { kind: 'plan-too-large', what: 'inflatedBytes', limit: PLAN_LIMITS.inflatedBytes },
    });
  });
});

test.each(Object.entries(VECTORS.codes))('what zlib packs is read: %s', (_, packed) => {
  expect(wentWell(decodePlan(packed))).toEqual(VECTORS.document.plan);
});

test('the checksum is the one of zip and PNG', () => {
  // The check value of CRC-32 that catalogues of checksums give for these nine digits, from memory.
  expect(crc32(bytesOf('123456789'))).toBe(0xcbf43926);
});

test('the dictionary is the one of version 1', () => {
  expect([PLAN_DICTIONARY.length, crc32(bytesOf(PLAN_DICTIONARY))]).toEqual([3878, 0xb37f7c0]);
});
