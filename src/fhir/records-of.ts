import type { DiaryEntry } from '../record/diary-entry.ts';
import type { RepEdit } from '../record/rep-edit.ts';
import { sameValue } from '../record/same-value.ts';
import type { StoredSet } from '../record/stored-set.ts';
import { fail, ok, type Result } from '../result.ts';
import { byMoment } from '../symptoms/entry.ts';
import { fromBase64, toBase64 } from './base64.ts';
import { codeSystemUrl, idSystem, type Naming } from './naming.ts';
import { type EnvelopeError, recordOfText } from './read-envelope.ts';
import { idOfRecord, type TravellingRecord } from './record-envelope.ts';
import { sha1 } from './sha1.ts';

/**
 * Why a document was not taken. `foreign`: of another system. `elsewhere`: the server keeps its content apart (`Attachment.url`); fetch it first. `damaged`:
 * size, hash or base64 do not fit. `other-id`: the record is not the one that the document says. `differs`: another document has the same record, otherwise.
 */
export type Refusal =
  | { readonly kind: 'foreign' }
  | { readonly kind: 'elsewhere' }
  | { readonly kind: 'damaged'; readonly how: 'no-attachment' | 'base64' | 'size' | 'hash' | 'utf8' }
  | { readonly kind: 'other-id' }
  | { readonly kind: 'withdrawn' }
  | { readonly kind: 'differs' }
  | EnvelopeError;

export interface Refused {
  /** The entry of the bundle, from 0. */
  readonly index: number;
  readonly why: Refusal;
}

export interface ReadRecords {
  /** With their changes by hand, by moment and id (`written-after.ts`); by the start, the oldest first. */
  readonly sets: readonly StoredSet[];
  /** Changes of sets that are not in the bundle, in their order. */
  readonly edits: readonly RepEdit[];
  /** By the moment they were told, the oldest first. */
  readonly diary: readonly DiaryEntry[];
  readonly refused: readonly Refused[];
  /** How many resources hold no record: those that only show one, and whatever else a server sends. */
  readonly others: number;
}

type Fields = Readonly<Record<string, unknown>>;
const fieldsOf = (value: unknown): Fields => (typeof value === 'object' && value !== null ? (value as Fields) : {});
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** The identifier of ours that a document has; null when it is none of ours. */
function recordIdIn(resource: Fields, naming: Naming): string | null {
  const isRecord = listOf(fieldsOf(resource.type).coding).some(
    (each) => fieldsOf(each).system === codeSystemUrl(naming, 'record'),
  );
  const ours = listOf(resource.identifier)
    .map(fieldsOf)
    .find(({ system }) => system === idSystem(naming, 'record'));
  return isRecord && typeof ours?.value === 'string' ? ours.value : null;
}

/** The text of the attachment, if it is all there. */
function textIn(resource: Fields): Result<string, Refusal> {
  const attachment = fieldsOf(fieldsOf(listOf(resource.content)[0]).attachment);
  const { data, size, hash, url } = attachment;
  if (data === undefined && typeof url === 'string') return fail({ kind: 'elsewhere' });
  if (typeof data !== 'string') return fail({ kind: 'damaged', how: 'no-attachment' });
  const bytes = fromBase64(data);
  if (!bytes) return fail({ kind: 'damaged', how: 'base64' });
  if (size !== bytes.length) return fail({ kind: 'damaged', how: 'size' });
  if (hash !== toBase64(sha1(bytes))) return fail({ kind: 'damaged', how: 'hash' });
  try {
    return ok(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(bytes));
  } catch {
    return fail({ kind: 'damaged', how: 'utf8' });
  }
}

function recordIn(resource: Fields, naming: Naming): Result<TravellingRecord, Refusal> {
  const id = recordIdIn(resource, naming);
  if (id === null) return fail({ kind: 'foreign' });
  if (resource.status !== 'current') return fail({ kind: 'withdrawn' });
  const text = textIn(resource);
  if (!text.ok) return text;
  const record = recordOfText(text.value);
  if (!record.ok) return record;
  return idOfRecord(record.value) === id ? record : fail({ kind: 'other-id' });
}

type Edit = Extract<TravellingRecord, { readonly kind: 'edit' }>;
const compared = (a: string, b: string): number => (a < b ? -1 : Number(a > b));

/**
 * Gives back exactly the records that a bundle holds: one of ours, or what a server answered to a search for documents (`searchset`). Each record is checked whole;
 * what is foreign or damaged is refused with the reason, and never read in part. One that is there several times is read once.
 */
export function recordsOf(bundle: unknown, naming: Naming): ReadRecords {
  const records = new Map<string, TravellingRecord>();
  const refused: Refused[] = [];
  let others = 0;
  listOf(fieldsOf(bundle).entry).forEach((entry, index) => {
    const resource = fieldsOf(fieldsOf(entry).resource);
    if (resource.resourceType !== 'DocumentReference') {
      others += 1;
      return;
    }
    const found = recordIn(resource, naming);
    if (!found.ok) {
      refused.push({ index, why: found.error });
      return;
    }
    const id = idOfRecord(found.value);
    const before = records.get(id);
    if (before && !sameValue(before, found.value)) refused.push({ index, why: { kind: 'differs' } });
    else records.set(id, found.value);
  });
  const all = [...records.values()];
  const edits = all.filter((each): each is Edit => each.kind === 'edit').toSorted((a, b) => byMoment(a.edit, b.edit));
  const sets = all
    .flatMap((each) => (each.kind === 'set' ? [each.set] : []))
    .map((set) => ({ ...set, edits: edits.flatMap(({ edit }) => (edit.setId === set.id ? [edit] : [])) }))
    .toSorted((a, b) => compared(a.startedAt, b.startedAt) || compared(a.id, b.id));
  const known = new Set(sets.map(({ id }) => id));
  return {
    sets,
    edits: edits.flatMap(({ edit }) => (known.has(edit.setId) ? [] : [edit])),
    diary: all.flatMap((each) => (each.kind === 'entry' ? [each.entry] : [])).toSorted(byMoment),
    refused,
    others,
  };
}
