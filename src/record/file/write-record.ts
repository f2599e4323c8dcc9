import { removedIds } from '../../dose/removal.ts';
import type { DiaryEntry } from '../diary-entry.ts';
import { ROUNDS } from '../lock/rounds.ts';
import type { LockCrypto } from '../lock/wrapped-key.ts';
import type { StoredSet } from '../stored-set.ts';
import { fileSetOf } from './file-set.ts';
import { type PackPart, packedBy } from './packed-part.ts';
import { FIRST_VERSION, MANIFEST, RECORD_VERSION, type RecordManifest, type RecordPart } from './record-manifest.ts';
import { sealedFile } from './sealed-file.ts';
import { zipWriter } from './zip-writer.ts';

/** Characters after which a part ends. Chosen: some dozens of sets, so that neither writing nor reading holds many in the memory. */
const PART_CHARACTERS = 2_000_000;

/** What a record is written from. */
export interface RecordToWrite {
  /** ISO 8601, UTC. */
  readonly createdAt: string;
  readonly person: RecordManifest['person'];
  readonly diary: readonly DiaryEntry[];
  /** Some sets at a time, in any order. */
  readonly pages: AsyncIterable<readonly StoredSet[]> | Iterable<readonly StoredSet[]>;
}

/**
 * Writes a record file, docs/record-format.md. Sets whose page is still open are written as they are; nothing of the passphrase lock is in it.
 * @param passphrase null: anybody who has the file can read it
 * @param rounds of PBKDF2
 * @param pack packs a part, perhaps elsewhere: the next is put together meanwhile
 */
export async function writeRecord(
  { createdAt, person, diary, pages }: RecordToWrite,
  passphrase: string | null,
  crypto: LockCrypto,
  rounds = ROUNDS,
  pack: PackPart = packedBy(crypto),
): Promise<Uint8Array<ArrayBuffer>> {
  const zip = zipWriter(createdAt);
  const parts: RecordPart[] = [];
  const counts = { sets: 0, edits: 0, entries: diary.length };

  let packing: Promise<void> = Promise.resolve();
  const into = async (name: string, json: string, count: number) => {
    const { sha256, ...file } = await pack(json);
    parts.push({ name, bytes: file.size, sha256, count });
    zip.addDeflated(name, file);
  };
  /** Gathers the JSON of values into parts of one kind. */
  const partsOf = (kind: 'sets' | 'diary') => {
    let waiting: string[] = [];
    let characters = 0;
    let written = 0;
    const flush = async () => {
      if (waiting.length === 0) return;
      written += 1;
      const name = `${kind}/${String(written).padStart(4, '0')}.json`;
      const [json, count] = [`[${waiting.join(',\n')}]`, waiting.length];
      waiting = [];
      characters = 0;
      // No more than one is under way.
      await packing;
      packing = into(name, json, count);
      // Should something else fail before this is waited for.
      packing.catch(() => undefined);
    };
    return {
      flush,
      async add(value: unknown) {
        const json = JSON.stringify(value);
        waiting.push(json);
        characters += json.length;
        if (characters > PART_CHARACTERS) await flush();
      },
    };
  };

  const sets = partsOf('sets');
  for await (const page of pages) {
    for (const set of page) {
      counts.sets += 1;
      counts.edits += set.edits.length;
      await sets.add(fileSetOf(set));
    }
  }
  await sets.flush();
  const entries = partsOf('diary');
  for (const entry of diary) await entries.add(entry);
  await entries.flush();
  await packing;

  const version = removedIds(diary).size > 0 ? RECORD_VERSION : FIRST_VERSION;
  const manifest: RecordManifest = { evenside: 'record', version, createdAt, person, counts, parts };
  zip.add(MANIFEST, new TextEncoder().encode(`${JSON.stringify(manifest, null, 2)}\n`));
  const plain = zip.end();
  return passphrase === null ? plain : sealedFile(crypto, plain, passphrase, createdAt, rounds);
}
