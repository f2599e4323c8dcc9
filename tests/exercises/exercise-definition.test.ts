import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exerciseOf } from '../../src/exercises/catalogue.ts';
import { readDefinition } from '../../src/exercises/exercise-definition.ts';
import { lying, movementsAt, recording, sitting, specOf } from '../measure/pose-builder.ts';
import { runSet } from '../measure/set-runner.ts';

const DOCS = join(import.meta.dirname, '../../docs');
const fits = new Ajv2020({ strict: true, strictRequired: false }).compile(
  JSON.parse(readFileSync(join(DOCS, 'exercise.schema.json'), 'utf8')) as object,
);

const GOOD = {
  name: 'Heel slide',
  angle: 'knee-flexion',
  direction: 'rises',
  posture: 'lying',
  side: 'either',
  noticeDeg: 5,
  leastDeg: 12,
  completeShare: 0.5,
  leastMs: 400,
} as const;

const valid = fc
  .record({
    name: fc.constantFrom('Heel slide', 'Fuß heben', '1'),
    angle: fc.constantFrom('ankle-dorsiflexion', 'leg-elevation', 'knee-flexion'),
    direction: fc.constantFrom('rises', 'falls'),
    posture: fc.constantFrom('upright', 'lying'),
    side: fc.constantFrom('left', 'right', 'either'),
    noticeDeg: fc.double({ min: 1, max: 5, noNaN: true }),
    leastDeg: fc.double({ min: 5, max: 15, noNaN: true }),
    completeShare: fc.double({ min: 0.2, max: 0.7, noNaN: true }),
    leastMs: fc.integer({ min: 100, max: 1200 }),
  })
  .map((d) => (d.angle === 'leg-elevation' ? { ...d, posture: 'lying' } : d));

/** A body whose joint moves by `by` degrees in the positive sense from where it rests. */
function bodyOf({ angle, posture, direction }: { angle: string; posture: string; direction: string }, by: number) {
  const move = direction === 'rises' ? by : -by;
  const built = posture === 'lying' ? lying : sitting;
  if (angle === 'ankle-dorsiflexion') return built({ ankleDeg: move });
  if (angle === 'knee-flexion') return posture === 'lying' ? built({ kneeDeg: 40 + move }) : built({ kneeDeg: 70 + move });
  return built({ thighDeg: (direction === 'rises' ? 0 : 10) + move });
}

test('any valid definition counts and measures a set of its joint', () => {
  fc.assert(
    fc.property(valid, (json) => {
      expect(fits(json)).toBe(true);
      const read = readDefinition(json);
      if (!read.ok) throw new Error(read.error.words);
      const bodyAt = (t: number) => bodyOf(json, movementsAt(t, { everyMs: 3500, lastsMs: 2500, ranges: [30, 30, 30] }));
      const { result } = runSet(specOf(exerciseOf(read.value)), recording({ lastsMs: 12_000, fps: 20, bodyAt }));
      expect({ exercise: result.exercise, count: result.count }).toEqual({ exercise: 'own', count: 3 });
      for (const rep of result.reps) expect(Math.abs(rep.rangeDeg - 30)).toBeLessThan(1.5);
    }),
    { numRuns: 30 },
  );
});

const WRONG: readonly (readonly [field: string, value: unknown])[] = [
  ['name', ''],
  ['name', ' Heel slide'],
  ['name', 'x'.repeat(61)],
  ['name', 'two\nlines'],
  ['name', 7],
  ['angle', 'hip'],
  ['angle', null],
  ['direction', 'up'],
  ['posture', 'kneeling'],
  ['side', 'both'],
  ['noticeDeg', 0.5],
  ['noticeDeg', 31],
  ['noticeDeg', '5'],
  ['leastDeg', 121],
  ['leastDeg', Number.NaN],
  ['completeShare', 1],
  ['completeShare', 0],
  ['leastMs', 99],
  ['leastMs', Number.POSITIVE_INFINITY],
  ['leastMs', 10_001],
];

test.each(WRONG)('%s: %j is refused in one sentence that names it', (field, value) => {
  const read = readDefinition({ ...GOOD, [field]: value });
  if (read.ok) throw new Error('expected a refusal');
  expect(read.error.words).toMatch(new RegExp(`^${field} .*[^.]: .*[^.]\\.$`));
});

test('fields that are missing, unknown or contradict each other are named', () => {
  const words = (value: unknown) => {
    const read = readDefinition(value);
    return read.ok ? null : read.error.words;
  };
  for (const field of Object.keys(GOOD)) {
    const { [field as keyof typeof GOOD]: _, ...rest } = GOOD;
    expect(words(rest)).toBe(`${field} is missing: add it, see docs/exercise-format.md.`);
  }
  expect(words({ ...GOOD, speed: 3 })).toContain('"speed" is no field');
  expect(words({ ...GOOD, leastDeg: 4 })).toContain('leastDeg must not be smaller than noticeDeg');
  expect(words({ ...GOOD, angle: 'leg-elevation', posture: 'upright' })).toContain('posture must be lying');
  expect(words([])).toContain('name is missing');
  for (const value of [null, 'x', 3]) expect(words(value)).toContain('must be an object');
  expect(words(GOOD)).toBeNull();
});

test('what is wrong in any field, and anything that is no definition, never passes', () => {
  fc.assert(
    fc.property(valid, fc.constantFrom(...WRONG), (json, [field, value]) => {
      expect(readDefinition({ ...json, [field]: value }).ok).toBe(false);
    }),
  );
  fc.assert(fc.property(fc.jsonValue(), (value) => !readDefinition(value).ok));
});

test('the documented example is a definition', () => {
  const [, example] = readFileSync(join(DOCS, 'exercise-format.md'), 'utf8').match(/```json\n([\s\S]*?)```/) ?? [];
  expect(readDefinition(JSON.parse(example ?? 'null')).ok).toBe(true);
});
