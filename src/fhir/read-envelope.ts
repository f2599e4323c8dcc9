import * as v from 'valibot';
import { diaryEntryShape } from '../record/diary-shape.ts';
import { levelsOf } from '../record/json-levels.ts';
import { shaped, wholeShape, wordsOfShape } from '../record/shape.ts';
import { editShape, storedSetShape } from '../record/stored-set-shape.ts';
import { fail, ok, type Result } from '../result.ts';
import { ENVELOPE_VERSION, type TravellingRecord } from './record-envelope.ts';

/** Why a text is no record. */
export type EnvelopeError =
  | { readonly kind: 'not-json' }
  /** More, or deeper, than any record. */
  | { readonly kind: 'too-large' }
  | { readonly kind: 'newer'; readonly version: number; readonly known: number }
  | { readonly kind: 'shape'; readonly what: string };

/** Of one record. Chosen: an hour's set with its curve is some 3 MB and 8 deep. */
export const ENVELOPE_LIMITS = { characters: 48_000_000, levels: 16 } as const;

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
  if (text.length > ENVELOPE_LIMITS.characters || levelsOf(text, ENVELOPE_LIMITS.levels) > ENVELOPE_LIMITS.levels)
    return fail({ kind: 'too-large' });
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
