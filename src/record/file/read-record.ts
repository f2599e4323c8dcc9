import * as v from 'valibot';
import { fail, ok, type Result } from '../../result.ts';
import type { DiaryEntry } from '../diary-entry.ts';
import { diaryEntryShape } from '../diary-shape.ts';
import { levelsOf } from '../json-levels.ts';
import type { LockCrypto } from '../lock/wrapped-key.ts';
import { shaped } from '../shape.ts';
import { type FileSet, fileSetsShape } from './file-set.ts';
import type { RecordFileError } from './record-file-error.ts';
import { RECORD_LIMITS, type RecordLimit } from './record-limits.ts';
import {
  HEADER,
  headerShape,
  MANIFEST,
  manifestShape,
  RECORD_VERSION,
  type RecordManifest,
  type RecordPart,
  SEALED,
  SEALED_SUM,
} from './record-manifest.ts';
import { openedFile, sha256Of } from './sealed-file.ts';
import { isZip, unpacked, unpackedAgain, type ZipEntry, zipEntries } from './zip-entries.ts';

type Found<T> = Result<T, RecordFileError>;
type Bytes = Uint8Array<ArrayBuffer>;
type Entries = ReadonlyMap<string, ZipEntry>;

/** Told after each part how much of all is checked, as a share, and waited for: the page may paint and hear meanwhile. */
export type Between = (share: number) => Promise<void>;

/** A record whose every part has been checked. */
export interface RecordFile {
  readonly manifest: RecordManifest;
  readonly setIds: readonly string[];
  readonly diary: readonly DiaryEntry[];
  /** First and last moment of all sets and entries, ISO 8601, UTC; null when there are none. */
  readonly span: { readonly from: string; readonly to: string } | null;
  /** The sets, some at a time: each part is unpacked anew, so that no more than one is in the memory. Synchronous, for use inside of a transaction. */
  readonly sets: () => Iterable<readonly FileSet[]>;
}

const damaged = (how: Extract<RecordFileError, { kind: 'record-damaged' }>['how']) =>
  fail({ kind: 'record-damaged', how } as const);
const tooLarge = (what: RecordLimit, found: number) =>
  fail({ kind: 'record-too-large', what, found, limit: RECORD_LIMITS[what] } as const);
const overLimit = (what: RecordLimit, found: number) => (found > RECORD_LIMITS[what] ? tooLarge(what, found) : null);

async function bytesOf(zip: Bytes, entries: Entries, name: string): Promise<Found<Bytes>> {
  const entry = entries.get(name);
  if (!entry) return damaged('part-missing');
  const over = name === SEALED ? null : overLimit('partBytes', entry.bytes);
  if (over) return over;
  const bytes = await unpacked(zip, entry);
  return bytes ? ok(bytes) : damaged('checksum');
}

function jsonOf(bytes: Bytes): Found<unknown> {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return damaged('not-utf8');
  }
  const over = overLimit('levels', levelsOf(text, RECORD_LIMITS.levels));
  if (over) return over;
  try {
    return ok(JSON.parse(text));
  } catch {
    return damaged('not-json');
  }
}

/** The manifest or the header: ours, of a version that is known, and of the right shape. */
function headOf<T>(bytes: Bytes, name: string, shape: v.GenericSchema<unknown, T>): Found<T> {
  const value = jsonOf(bytes);
  if (!value.ok) return value;
  const head = shaped(v.looseObject({ evenside: v.literal('record'), version: v.number() }), value.value);
  if (!head.ok) return fail({ kind: 'not-a-record' });
  const { version } = head.value;
  if (version > RECORD_VERSION) return fail({ kind: 'record-newer', version, known: RECORD_VERSION });
  const found = shaped(shape, value.value);
  return found.ok ? found : wrongAt(name, found.error.where, found.error.what);
}

const wrongAt = (name: string, where: string, what: string) =>
  fail({
    kind: 'record-wrong',
    where: where === '' ? name : `${name}${where.startsWith('[') ? '' : '.'}${where}`,
    what,
  } as const);

/** One part as its shape has it. @param sum whether its checksum is looked at, too */
async function partOf<T>(
  zip: Bytes,
  entries: Entries,
  part: RecordPart,
  shape: v.GenericSchema<unknown, readonly T[]>,
  crypto: LockCrypto,
): Promise<Found<readonly T[]>> {
  const bytes = await bytesOf(zip, entries, part.name);
  if (!bytes.ok) return bytes;
  if (bytes.value.length !== part.bytes || (await sha256Of(crypto, bytes.value)) !== part.sha256) return damaged('checksum');
  const value = jsonOf(bytes.value);
  if (!value.ok) return value;
  const found = shaped(shape, value.value);
  if (!found.ok) return wrongAt(part.name, found.error.where, found.error.what);
  return found.value.length === part.count ? found : wrongAt(part.name, '', `has ${found.value.length}, not ${part.count}`);
}

/** Gathers ids; a second one of the same is a fault. */
function idsOnce() {
  const seen = new Set<string>();
  return {
    seen,
    add(id: string): boolean {
      if (seen.has(id)) return false;
      seen.add(id);
      return true;
    },
  };
}

async function checkedRecord(zip: Bytes, entries: Entries, crypto: LockCrypto, between: Between): Promise<Found<RecordFile>> {
  const head = await bytesOf(zip, entries, MANIFEST);
  if (!head.ok) return head;
  const found = headOf(head.value, MANIFEST, manifestShape);
  if (!found.ok) return found;
  const manifest = found.value;
  const { parts, counts } = manifest;
  const unpackedBytes = parts.reduce((sum, { bytes }) => sum + bytes, 0);
  const over =
    overLimit('parts', parts.length) ??
    overLimit('unpackedBytes', unpackedBytes) ??
    overLimit('sets', counts.sets) ??
    overLimit('entries', counts.entries);
  if (over) return over;
  if (new Set(parts.map(({ name }) => name)).size < parts.length) return wrongAt(MANIFEST, 'parts', 'names a part twice');

  const [sets, edits, diaryIds] = [idsOnce(), idsOnce(), idsOnce()];
  const diary: DiaryEntry[] = [];
  let span: { from: string; to: string } | null = null;
  const lived = (at: string) => {
    span = span ? { from: at < span.from ? at : span.from, to: at > span.to ? at : span.to } : { from: at, to: at };
  };
  let done = 0;
  const told = (part: RecordPart) => {
    done += part.bytes;
    return between(done / unpackedBytes);
  };
  const ofSets = parts.filter(({ name }) => name.startsWith('sets/'));
  for (const part of ofSets) {
    const page = await partOf<FileSet>(zip, entries, part, fileSetsShape, crypto);
    if (!page.ok) return page;
    for (const [i, set] of page.value.entries()) {
      if (!sets.add(set.id)) return wrongAt(part.name, `[${i}].id`, 'is there twice');
      if (!set.edits.every(({ id }) => edits.add(id))) return wrongAt(part.name, `[${i}].edits`, 'has an id that is there twice');
      lived(set.startedAt);
    }
    await told(part);
  }
  for (const part of parts.filter(({ name }) => name.startsWith('diary/'))) {
    const page = await partOf<DiaryEntry>(zip, entries, part, v.array(diaryEntryShape), crypto);
    if (!page.ok) return page;
    for (const [i, entry] of page.value.entries()) {
      if (!diaryIds.add(entry.id)) return wrongAt(part.name, `[${i}].id`, 'is there twice');
      lived(entry.at);
      diary.push(entry);
    }
    await told(part);
  }
  if (sets.seen.size !== counts.sets || edits.seen.size !== counts.edits || diary.length !== counts.entries) {
    return wrongAt(MANIFEST, 'counts', 'are not those of the parts');
  }
  const again = function* (): Iterable<readonly FileSet[]> {
    for (const { name } of ofSets) {
      const entry = entries.get(name);
      if (!entry) throw new Error(`sets requires the part ${name} to be as it was checked, got none`);
      // The same bytes as those that were checked above.
      yield JSON.parse(new TextDecoder().decode(unpackedAgain(zip, entry))) as readonly FileSet[];
    }
  };
  return ok({ manifest, setIds: [...sets.seen], diary, span, sets: again });
}

/**
 * Reads a record file. The whole of it is checked before anything is given back.
 * @param bytes not changed as long as the record is used
 * @param passphrase null: none was given yet
 */
export async function readRecord(
  bytes: Bytes,
  passphrase: string | null,
  crypto: LockCrypto,
  between: Between = async () => undefined,
): Promise<Found<RecordFile>> {
  const over = overLimit('fileBytes', bytes.length);
  if (over) return over;
  if (!isZip(bytes)) return fail({ kind: 'not-a-record' });
  const entries = zipEntries(bytes);
  if (!entries) return damaged('not-zip');
  if (entries.has(MANIFEST)) return checkedRecord(bytes, entries, crypto, between);
  if (!entries.has(HEADER)) return fail({ kind: 'not-a-record' });

  const head = await bytesOf(bytes, entries, HEADER);
  if (!head.ok) return head;
  const header = headOf(head.value, HEADER, headerShape);
  if (!header.ok) return header;
  const [sealed, sum] = [await bytesOf(bytes, entries, SEALED), await bytesOf(bytes, entries, SEALED_SUM)];
  if (!sealed.ok) return sealed;
  if (!sum.ok) return sum;
  if ((await sha256Of(crypto, sealed.value)) !== new TextDecoder().decode(sum.value).trim()) return damaged('checksum');
  if (passphrase === null) return fail({ kind: 'record-sealed' });
  const plain = await openedFile(crypto, header.value, head.value, sealed.value, passphrase);
  if (!plain) return fail({ kind: 'record-passphrase' });
  const inner = zipEntries(plain);
  return inner ? checkedRecord(plain, inner, crypto, between) : damaged('not-zip');
}
