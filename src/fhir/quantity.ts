import type { Quantity } from '@medplum/fhirtypes';

const UCUM = 'http://unitsofmeasure.org';
/** Units of UCUM. `{repetition}`, `{set}` and `{cycle}` are annotations of the unit 1. */
const UNITS = { deg: '°', ms: 'ms', s: 's', '{repetition}': 'repetitions', '{set}': 'sets', '{cycle}': 'cycles' } as const;
type Ucum = keyof typeof UNITS;

/** Two places, as in the tables: further digits are noise. The whole record has them all. */
const rounded = (value: number): number => Math.round(value * 100) / 100 + 0;

/** A value with its unit. */
export const quantity = (value: number, code: Ucum): Quantity => ({
  value: Number.isFinite(rounded(value)) ? rounded(value) : value,
  unit: UNITS[code],
  system: UCUM,
  code,
});
