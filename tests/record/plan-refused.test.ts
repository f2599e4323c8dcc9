import fc from 'fast-check';
import { deflateSync } from 'fflate';
import { describe, expect, test } from 'vitest';
import { givenPlan } from '../../src/dose/given-plan.ts';
import { PLAN_LIMITS } from '../../src/record/plan-error.ts';
import { decodePlan, encodePlan, encodePlanCode } from '../../src/record/plan-transfer.ts';
import { BASE64URL, bytesOf, changed, code, codeOf, deflated, errorOf, file, plan } from './plan-codes.ts';
import { wentWell } from './went-well.ts';

describe('a plan that came to harm', () => {
  const sameOrRefused = (text: string) => {
    const found = decodePlan(text);
    if (found.ok) expect(found.value).toEqual(givenPlan(plan));
    else expect(['plan-damaged', 'not-a-plan', 'plan-newer']).toContain(found.error.kind);
    return found.ok;
  };

  test('a code cut anywhere is refused', () => {
    for (let end = 0; end < code.length; end += 1) {
      expect(errorOf(`https://example.org/#/take/${code.slice(0, end)}`), `cut to ${end}`).toMatchObject({
        kind: 'plan-damaged',
      });
    }
  });

  test('a code with any one character changed to any other is refused, or is the same plan', () => {
    let taken = 0;
    for (let at = 0; at < code.length; at += 1) {
      for (const character of BASE64URL) {
        if (character === code[at]) continue;
        if (sameOrRefused(code.slice(0, at) + character + code.slice(at + 1))) taken += 1;
      }
    }
    // Only bits after the last byte may differ: at most 15 other last characters.
    expect(taken).toBeLessThanOrEqual(15);
  });

  test('a code with a character left out, doubled, or two exchanged is refused, or is the same plan', () => {
    for (let at = 0; at < code.length; at += 1) {
      sameOrRefused(code.slice(0, at) + code.slice(at + 1));
      sameOrRefused(code.slice(0, at) + code[at] + code.slice(at));
      sameOrRefused(code.slice(0, at) + (code[at + 1] ?? '') + code[at] + code.slice(at + 2));
    }
  });

  test('a file cut anywhere is refused', () => {
    const text = file.trimEnd();
    for (let end = 0; end < text.length; end += 1) {
      const kind = errorOf(text.slice(0, end))?.kind;
      expect(['plan-damaged', 'not-a-plan'], `cut to ${end}`).toContain(kind);
    }
    expect(errorOf(text.slice(0, -1))).toEqual({ kind: 'plan-damaged', how: 'not-json' });
  });

  test.each<readonly [string, string, string]>([
    ['no code at all', '#/take/', 'cut-short'],
    ['a character that base64url lacks', `#/take/${code.slice(0, 40)}%${code.slice(41)}`, 'not-base64url'],
    ['a length that no bytes give', `#/take/${code.slice(0, 41)}`, 'not-base64url'],
    ['the head only', `#/take/${code.slice(0, 6)}`, 'cut-short'],
    ['bytes that are no deflate', codeOf(Uint8Array.of(7, 255, 1, 2, 3)), 'not-deflate'],
    ['a version before the first', codeOf(deflated(file), 0), 'not-deflate'],
    ['bytes that are no UTF-8', codeOf(deflateSync(Uint8Array.of(0x7b, 0xff, 0x7d))), 'not-utf8'],
    ['a text that breaks off, well packed', codeOf(deflated(file.slice(0, 300))), 'not-json'],
  ])('%s', (_, text, how) => {
    expect(errorOf(text)).toEqual({ kind: 'plan-damaged', how });
  });
});

describe('what is no plan of this version', () => {
  test.each([
    ['nothing', ''],
    ['a text', 'Dear Mrs Beispiel, please find attached'],
    ['another JSON', '{"evenside":"recording","schema":1}'],
    ['a list', '[{"evenside":"plan"}]'],
    ['null', ' null '],
    ['an address without a plan', 'https://example.org/'],
    ['other JSON in a well made code', codeOf(deflated('{"plan":1}'))],
  ])('%s', (_, text) => {
    const kind = text === ' null ' ? 'plan-damaged' : 'not-a-plan';
    expect(errorOf(text)?.kind).toBe(kind);
  });

  test('a way of measuring makes a plan of version 2, which older programs know as newer; every other plan stays version 1', () => {
    expect(JSON.parse(wentWell(encodePlan(plan))).version).toBe(1);
    const asked = { ...plan, items: plan.items.map((item) => ({ ...item, seenBy: 'stickers' as const })) };
    const text = wentWell(encodePlan(asked));
    expect(JSON.parse(text).version).toBe(2);
    expect(wentWell(decodePlan(text))).toEqual(givenPlan(asked));
    expect(wentWell(decodePlan(wentWell(encodePlanCode(asked, { named: true }))))).toEqual(givenPlan(asked));
  });

  test('a newer document and a newer packing', () => {
    const newer = changed((_plan, whole) => {
      whole.version = 3;
      whole.extra = true;
    });
    expect(errorOf(newer)).toEqual({ kind: 'plan-newer', version: 3, known: 2 });
    expect(errorOf(codeOf(deflated(newer)))).toEqual({ kind: 'plan-newer', version: 3, known: 2 });
    expect(errorOf(codeOf(bytesOf('what comes'), 9))).toEqual({ kind: 'plan-newer', version: 9, known: 1 });
  });

  const firstLine = (given: Record<string, unknown>) => (given.items as Record<string, unknown>[])[0] as Record<string, unknown>;
  test.each<readonly [string, string, (plan: Record<string, unknown>, whole: Record<string, unknown>) => void]>([
    ['version', 'a version that is no number', (_, whole) => Object.assign(whole, { version: '1' })],
    ['plan', 'no plan in it', (_, whole) => Object.assign(whole, { plan: 7 })],
    ['plan.patient', 'somebody’s name', (given) => Object.assign(given, { patient: 'Erika' })],
    ['plan.id', 'an id that is none', (given) => Object.assign(given, { id: '1' })],
    ['plan.writtenAt', 'a day instead of a moment', (given) => Object.assign(given, { writtenAt: '2026-05-01' })],
    ['plan.items', 'no line', (given) => Object.assign(given, { items: [] })],
    ['plan.items', 'a line twice', (given) => Object.assign(given, { items: [firstLine(given), firstLine(given)] })],
    ['plan.items[0].restS', 'a rest below nothing', (given) => Object.assign(firstLine(given), { restS: -1 })],
    [
      'plan.items[0].exercise',
      'an exercise that is not known',
      (given) => Object.assign(firstLine(given), { exercise: 'squat' }),
    ],
    ['plan.items[0].start.setsADay', 'sets as a text', (given) => Object.assign(firstLine(given), { start: { setsADay: '3' } })],
  ])('names the first thing wrong: %s, %s', (where, _what, change) => {
    expect(errorOf(changed(change))).toMatchObject({ kind: 'plan-wrong', where });
  });

  test('a key that would change every object is one too many, and changes none', () => {
    const text = file.replace('"plan": {', '"plan": {"__proto__": {"polluted": true},');
    expect(errorOf(text)).toMatchObject({ kind: 'plan-wrong' });
    expect(Object.hasOwn(Object.prototype, 'polluted')).toBe(false);
  });
});

describe('what is too large', () => {
  test('a file', () => {
    const found = PLAN_LIMITS.fileCharacters + 1;
    const limit = PLAN_LIMITS.fileCharacters;
    expect(errorOf(`{${' '.repeat(limit - 1)}}`)).toEqual({ kind: 'plan-too-large', what: 'fileCharacters', found, limit });
    expect(errorOf(`{${' '.repeat(limit - 2)}}`)).toEqual({ kind: 'not-a-plan' });
  });

  test('a code', () => {
    const limit = PLAN_LIMITS.codeCharacters;
    expect(errorOf('A'.repeat(limit + 1))).toEqual({ kind: 'plan-too-large', what: 'codeCharacters', found: limit + 1, limit });
  });

  test('a small code that inflates to a lot, told without inflating it all', () => {
    const limit = PLAN_LIMITS.inflatedBytes;
    const bomb = codeOf(deflateSync(new Uint8Array(9_000_000), { level: 9 }));
    expect(bomb.length).toBeLessThan(PLAN_LIMITS.codeCharacters);
    expect(errorOf(bomb)).toEqual({ kind: 'plan-too-large', what: 'inflatedBytes', found: limit + 1, limit });
  });

  test('brackets in brackets; those in a text do not count', () => {
    const deep = changed((given) => Object.assign(given, { by: JSON.parse('['.repeat(20) + ']'.repeat(20)) }));
    expect(errorOf(deep)).toMatchObject({ kind: 'plan-too-large', what: 'levels', limit: PLAN_LIMITS.levels });
    const named = { ...plan, by: { role: 'therapist', name: `"\\"${'[{'.repeat(40)}` } as const };
    expect(wentWell(decodePlan(wentWell(encodePlan(named)))).by).toEqual(named.by);
  });
});

test('10,000 texts of every kind never throw, and none of them is taken for a plan that it is not', () => {
  const whole = JSON.parse(file);
  const spliced = (of: string) =>
    fc
      .tuple(fc.nat(of.length), fc.nat(20), fc.string({ maxLength: 8 }))
      .map(([at, n, put]) => of.slice(0, at) + put + of.slice(at + n));
  const anything = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 200 }),
    fc.string({ unit: fc.constantFrom(...BASE64URL), maxLength: 200 }).map((text) => `#/take/${text}`),
    fc.json(),
    fc.jsonValue().map((value) => JSON.stringify({ ...whole, plan: value })),
    fc.jsonValue().map((value) => JSON.stringify({ ...whole, plan: { ...whole.plan, items: [value] } })),
    fc.uint8Array({ maxLength: 60 }).map((bytes) => codeOf(bytes)),
    fc.uint8Array({ maxLength: 60 }).map((bytes) => codeOf(deflateSync(bytes))),
    spliced(file),
    spliced(code),
    spliced(JSON.stringify(whole)).map((text) => codeOf(deflated(text))),
  );
  let taken = 0;
  fc.assert(
    fc.property(anything, (text) => {
      const found = decodePlan(text);
      if (!found.ok) return;
      taken += 1;
      // What is taken is a plan that can be given again and stays what it is.
      const again = { ...found.value, kind: 'prescription', schema: 1, at: found.value.writtenAt, day: plan.day } as const;
      expect(wentWell(decodePlan(wentWell(encodePlan(again))))).toEqual(found.value);
    }),
    { numRuns: 10_000 },
  );
  // Splices that change a name, a number within its bounds or only blanks.
  expect(taken).toBeLessThan(3000);
});
