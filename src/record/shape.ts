import * as v from 'valibot';
import { fail, ok, type Result } from '../result.ts';
import { type CalendarDay, calendarDay } from '../symptoms/calendar-day.ts';
import { deg, ms, ratio } from '../units.ts';

/** Numbers that are read back take their unit here. NaN and infinities are no numbers. */
const finite = v.pipe(v.number(), v.finite());
export const degShape = v.pipe(finite, v.transform(deg));
export const msShape = v.pipe(finite, v.transform(ms));
export const ratioShape = v.pipe(finite, v.minValue(0), v.maxValue(1), v.transform(ratio));
export const wholeShape = v.pipe(v.number(), v.safeInteger(), v.minValue(0));
/** A moment as `Date.toISOString` writes it, so that the order of the texts is the order of the moments. */
export const momentShape = v.pipe(
  v.string(),
  v.check((text) => !Number.isNaN(Date.parse(text)) && new Date(text).toISOString() === text, 'must be a moment in UTC'),
);
export const dayShape = v.pipe(
  v.string(),
  v.check((text) => calendarDay(text) !== null, 'must be a day such as 2026-05-04'),
  v.transform((text) => text as CalendarDay),
);
export const idShape = v.pipe(v.string(), v.uuid());

/** One of the keys of `all`: written as a record so that the compiler misses none. */
export const oneOf = <K extends string>(all: Readonly<Record<K, true>>) => v.picklist(Object.keys(all) as K[]);

/** Whether an entry is somebody's own or invented. */
export const originShape = oneOf({ own: true, example: true });

const sound = v.custom<never[]>(() => true);

/**
 * A list of very many values, a curve's say: one plain loop where all are as they must be, a tenth of the time; else the first that is not is named by its
 * own shape.
 * @param isSound whether `each` would take a value, and leave it as it is
 */
export function manyOf<T>(
  each: v.GenericSchema<unknown, T>,
  isSound: (value: unknown) => boolean,
): v.GenericSchema<unknown, T[]> {
  const oneByOne = v.array(each);
  const areSound = (values: readonly unknown[]): boolean => {
    for (let i = 0; i < values.length; i += 1) if (!isSound(values[i])) return false;
    return true;
  };
  return v.lazy((values) => (Array.isArray(values) && areSound(values) ? sound : oneByOne));
}

/** The path of a fault as code would write it: `frames[3].p[0]`. */
const placeOf = (issue: v.BaseIssue<unknown>): string =>
  (issue.path ?? [])
    .map(({ key }) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`))
    .join('')
    .replace(/^\./, '');

/** The first thing wrong with a value that should have a known shape. */
export interface ShapeError {
  readonly kind: 'shape';
  /** Empty when the whole value is wrong. */
  readonly where: string;
  /** What is wrong there, e.g. "Expected number but received "12"". */
  readonly what: string;
}

export function shaped<T>(schema: v.GenericSchema<unknown, T>, value: unknown): Result<T, ShapeError> {
  const parsed = v.safeParse(schema, value, { abortEarly: true });
  if (parsed.success) return ok(parsed.output);
  const [issue] = parsed.issues;
  return fail({ kind: 'shape', where: placeOf(issue), what: issue.message });
}

export const wordsOfShape = ({ where, what }: ShapeError): string => (where ? `${where}: ${what}` : what);

/** The id of a row that can't be read, as far as it has one. */
export const idOfRow = (row: unknown): string => (typeof row === 'object' && row !== null && 'id' in row ? String(row.id) : '');
