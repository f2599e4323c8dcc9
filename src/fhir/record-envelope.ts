import * as v from 'valibot';
import type { DiaryEntry } from '../record/diary-entry.ts';
import { diaryEntryShape } from '../record/diary-shape.ts';
import type { RepEdit } from '../record/rep-edit.ts';
import { sameValue } from '../record/same-value.ts';
import { shaped, wholeShape, wordsOfShape } from '../record/shape.ts';
import type { StoredSet } from '../record/stored-set.ts';
import { editShape, storedSetShape } from '../record/stored-set-shape.ts';
import { fail, ok, type Result } from '../result.ts';

/** A change of meaning of a field is a new version. */
const ENVELOPE_VERSION = 1;

/** A record as it travels, whole. None of them ever changes: a set's changes by hand are records of their own. */
export type TravellingRecord =
  | { readonly kind: 'set'; readonly set: StoredSet }
  /** `place`: which change of its set it was where it was made, from 0. */
  | { readonly kind: 'edit'; readonly edit: RepEdit; readonly place: number }
  | { readonly kind: 'entry'; readonly entry: DiaryEntry };

export const idOfRecord = (record: TravellingRecord): string => {
  if (record.kind === 'set') return record.set.id;
  return record.kind === 'edit' ? record.edit.id : record.entry.id;
};

/** The records of a set: itself without its changes, then each change. */
export const recordsOfSet = (set: StoredSet): readonly TravellingRecord[] => [
  { kind: 'set', set: { ...set, edits: [] } },
  ...set.edits.map((edit, place): TravellingRecord => ({ kind: 'edit', edit, place })),
];

/** The text of a record. Repetitions stand in a set once: its own are those of its result, but for sets that broke off. */
export function envelopeText(record: TravellingRecord): string {
  const head = { evenside: 'record', version: ENVELOPE_VERSION };
  if (record.kind !== 'set') return JSON.stringify({ ...head, ...record });
  const { edits: _, reps, ...set } = record.set;
  const isTwice = sameValue(reps, set.result?.reps);
  return JSON.stringify({ ...head, kind: 'set', set: isTwice ? set : { ...set, reps } });
}

/** Why a text is no record. */
export type EnvelopeError =
  | { readonly kind: 'not-json' }
  | { readonly kind: 'newer'; readonly version: number; readonly known: number }
  | { readonly kind: 'shape'; readonly what: string };

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** The set with its repetitions back in their place. */
function setWhole(set: unknown): unknown {
  if (!isObject(set)) return set;
  const { result } = set;
  return { ...(isObject(result) && !('reps' in set) ? { reps: result.reps } : {}), ...set, edits: [] };
}

const head = { evenside: v.literal('record'), version: v.literal(ENVELOPE_VERSION) };
const envelopeShape = v.variant('kind', [
  v.strictObject({ ...head, kind: v.literal('set'), set: storedSetShape }),
  v.strictObject({ ...head, kind: v.literal('edit'), edit: editShape, place: wholeShape }),
  v.strictObject({ ...head, kind: v.literal('entry'), entry: diaryEntryShape }),
]);

/** Reads a record's text. The whole of it is checked before anything of it is given back. */
export function recordOfText(text: string): Result<TravellingRecord, EnvelopeError> {
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return fail({ kind: 'not-json' });
  }
  if (isObject(value) && typeof value.version === 'number' && value.version > ENVELOPE_VERSION)
    return fail({ kind: 'newer', version: value.version, known: ENVELOPE_VERSION });
  const whole = isObject(value) && value.kind === 'set' ? { ...value, set: setWhole(value.set) } : value;
  const found = shaped(envelopeShape, whole);
  if (!found.ok) return fail({ kind: 'shape', what: wordsOfShape(found.error) });
  const { evenside: _, version: __, ...record } = found.value;
  return ok(record);
}
