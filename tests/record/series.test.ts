import { readFileSync } from 'node:fs';
import { Ajv2020 } from 'ajv/dist/2020.js';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import type { Observation } from '../../src/measure/observation.ts';
import { angleFile, angleTable } from '../../src/record/angle-file.ts';
import { landmarkTable } from '../../src/record/landmark-table.ts';
import { deg, ms, px, ratio } from '../../src/units.ts';
import { TOWEL_SCRUNCH } from './own-definitions.ts';
import { rep, result } from './set-builders.ts';

const cellsOf = (csv: string) => Papa.parse<string[]>(csv, { delimiter: ',', newline: '\r\n' }).data;
const schemaOf = (name: string) => JSON.parse(readFileSync(new URL(`../../docs/${name}`, import.meta.url), 'utf8'));

describe('the angle through a set', () => {
  const of = { result: result([rep(1)]), definition: null, startedAt: '2026-03-01T00:00:00.000Z' };
  // The definition's schema goes by its file name.
  const ajv = new Ajv2020({ strict: true }).addSchema({ ...schemaOf('exercise.schema.json'), $id: 'exercise.schema.json' });
  const validate = ajv.compile(schemaOf('angle-series.schema.json'));

  test('as JSON says what it is the angle of, keeps a hole as null, and is what the published schema says', () => {
    const file = JSON.parse(JSON.stringify(angleFile(of)));
    expect(file).toMatchObject({
      exercise: 'foot-tap',
      angle: 'ankle-dorsiflexion',
      rangeUncertaintyDeg: 1.1,
      tMs: [0, 33, 67],
      angleDeg: [1, null, 2.5],
    });
    expect(validate(file)).toBe(true);
  });

  test.each([
    ['angle', 'hip'],
    ['exercise', 'skiing'],
    ['tMs', [0.5]],
    ['angleDeg', ['1']],
    ['more', 1],
  ])('the schema refuses a wrong %s', (field, value) => {
    expect(validate({ ...angleFile(of), [field]: value })).toBe(false);
  });

  test('of an own exercise carries the definition, which the schema checks too, and is not made without', () => {
    const definition = TOWEL_SCRUNCH;
    const own = { ...of, result: { ...of.result, exercise: 'own' } as const };
    expect(angleFile({ ...own, definition }).angle).toBe('foot-elevation');
    expect(validate(angleFile({ ...own, definition }))).toBe(true);
    expect(validate({ ...angleFile({ ...own, definition }), definition: { name: 'x' } })).toBe(false);
    expect(() => angleFile(own)).toThrow(/definition/);
  });

  test('as a table has one row a picture and an empty cell for a hole', () => {
    expect(cellsOf(angleTable(of))).toEqual([
      ['t_ms', 'angle_deg'],
      ['0', '1'],
      ['33', ''],
      ['67', '2.5'],
    ]);
  });
});

test('landmarks as a table: a column for each number, empty where nothing was seen', () => {
  const points = Array.from({ length: 33 }, (_, i) => ({ x: px(i + 0.26), y: px(2 * i), z: px(-i), visibility: ratio(0.987) }));
  const turn = { turnDeg: deg(1.234), seDeg: deg(0.1), zncc: ratio(1), anchor: 2 };
  const seen: Observation[] = [
    {
      tMs: ms(0),
      landmarks: points,
      motion: { foot: turn, shank: null, thigh: null },
      camera: null,
      brightness: 99.96,
    },
    { tMs: ms(33.3333), landmarks: null, motion: null, camera: null, brightness: null },
  ];
  const [names, first, second] = cellsOf(landmarkTable(seen));
  expect(names).toHaveLength(1 + 33 * 4 + 3 * 3 + 2);
  expect(new Set(names).size).toBe(names?.length);
  const at = (name: string) => first?.[names?.indexOf(name) ?? -1];
  expect(['p32_x_px', 'p32_y_px', 'p32_z_px', 'p32_visibility'].map(at)).toEqual(['32.3', '64', '-32', '0.99']);
  expect(['foot_turn_deg', 'foot_anchor', 'shank_turn_deg', 'brightness'].map(at)).toEqual(['1.23', '2', '', '100']);
  expect(second?.filter((cell) => cell !== '')).toEqual(['33.333']);
});
