import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { withinLimits } from '../../src/dose/dose.ts';
import { PRESCRIBED_EXERCISE_IDS } from '../../src/dose/prescribed-exercise.ts';
import { SYMPTOM_LIMIT, THRESHOLD_SOURCES, THRESHOLDS } from '../../src/dose/progression-rule.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { RED_FLAG_IDS, RED_FLAGS } from '../../src/symptoms/red-flags.ts';
import { itemId } from './plan.ts';

const DOC = readFileSync(join(import.meta.dirname, '../../docs/dose-rules.md'), 'utf8').replaceAll(/\s+/g, ' ');
/** The cells of the row that begins with this name. */
function rowOf(name: string): readonly string[] {
  const row = DOC.slice(DOC.indexOf(`| \`${name}\` |`) + 1).split('|');
  return row.slice(1, 3).map((cell) => cell.trim());
}

describe('the doses offered', () => {
  test.each(PRESCRIBED_EXERCISE_IDS)(
    'of %s lie within their limits, can step both ways, and say that they are common practice',
    (id) => {
      const item = startingDose(id, itemId(1), ['left', 'right']);
      expect(withinLimits(item.start, item.progression.limits)).toEqual(item.start);
      expect(item.basis).toBe('common-practice');
      expect(item.cautions).toContain('stop-if-worse');
      const room = item.progression.steps.map(({ field }) => [
        item.start[field] - item.progression.limits[field].least,
        item.progression.limits[field].most - item.start[field],
      ]);
      for (const way of [0, 1]) expect(room.some((ways) => Number(ways[way]) > 0)).toBe(true);
    },
  );

  // Common practice; texts give home doses of nerve glides around 10 repetitions (from memory).
  test('are those asked for: one set of glides on the first day, taps and toe lifts three times through the full range', () => {
    const of = (id: (typeof PRESCRIBED_EXERCISE_IDS)[number]) => startingDose(id, itemId(1), ['left']);
    expect(of('nerve-glide')).toMatchObject({
      start: { setsADay: 1, repsASet: 10 },
      progression: { limits: { repsASet: { most: 15 } }, steps: [{ field: 'setsADay', by: 1 }, {}] },
    });
    for (const id of ['toe-lift', 'foot-tap'] as const) {
      expect(of(id)).toMatchObject({
        start: { setsADay: 3, repsASet: 15 },
        target: { kind: 'full' },
        spread: 'day',
        progression: { limits: { repsASet: { most: 20 } } },
      });
    }
    expect(of('leg-raise').target).toEqual({ kind: 'symptoms' });
  });
});

describe('docs/dose-rules.md', () => {
  const offered = { ...THRESHOLDS, symptomLimit: SYMPTOM_LIMIT };
  test.each(Object.entries(offered))('gives %s as offered, with where it comes from', (name, value) => {
    const [given, source] = rowOf(name);
    expect(given?.split(' ')[0]).toBe(String(value));
    for (const { cite, readAs } of THRESHOLD_SOURCES[name as keyof typeof offered]) {
      if (readAs === 'advice') expect(source).toBe('common practice');
      else expect(source).toContain(/[A-Z][a-zé]+(?: KG| JD| H)?(?: et al\.)? \d{4}/.exec(cite)?.[0] ?? cite);
    }
  });

  test.each(RED_FLAG_IDS)('says whom to call for %s', (id) => {
    expect(rowOf(id)[0]).toBe(RED_FLAGS[id].urgency === 'now' ? 'emergency service, now' : 'a doctor the same day');
  });
});
