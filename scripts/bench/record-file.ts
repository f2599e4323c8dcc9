import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { resultOf } from '../../src/record/file/file-set.ts';
import { readRecord } from '../../src/record/file/read-record.ts';
import { writeRecord } from '../../src/record/file/write-record.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { manySets } from './many-sets.ts';

/** Ten years of one person, three sets a day. */
export const RECORD_SETS = 10_000;
/** Sets that are in the memory at a time, as the store gives them. */
const PAGE = 100;

/** What a record of many sets costs, without the database. */
export interface RecordFileCost {
  readonly fileBytes: number;
  /** Of the same sets as plain JSON. */
  readonly jsonBytes: number;
  readonly writeMs: number;
  readonly stringifyMs: number;
  /** The check of the whole file. */
  readonly readMs: number;
  /** All sets once more, with their curves, as they go into the database. */
  readonly againMs: number;
  readonly parseMs: number;
  /** The most that was held beyond what was held before, the file itself included; looked at between the parts, after a collection. */
  readonly writePeakBytes: number;
  readonly readPeakBytes: number;
}

setFlagsFromString('--expose-gc');
const collect = runInNewContext('gc') as () => void;

/** Heap and buffers now, after a collection. */
function heldBytes(): number {
  collect();
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
}

/** Pages of sets that are made as they are asked for; what making them takes is taken off. */
function pagesOf(count: number, onPage: (ms: number) => void) {
  const all = manySets(count)[Symbol.iterator]();
  return {
    *[Symbol.iterator](): Iterator<readonly StoredSet[]> {
      for (let n = 0; n < count; n += PAGE) {
        const began = performance.now();
        const page: StoredSet[] = [];
        for (let next = all.next(); !next.done && page.length < PAGE; next = all.next()) {
          page.push(next.value);
          if (page.length === PAGE) break;
        }
        onPage(performance.now() - began);
        yield page;
      }
    },
  };
}

export async function recordFileCost(count = RECORD_SETS): Promise<RecordFileCost> {
  let [jsonBytes, stringifyMs, parseMs] = [0, 0, 0];
  for (const page of pagesOf(count, () => undefined)) {
    const began = performance.now();
    const text = JSON.stringify(page);
    const between = performance.now();
    JSON.parse(text);
    parseMs += performance.now() - between;
    stringifyMs += between - began;
    jsonBytes += text.length;
  }

  const before = heldBytes();
  let [made, writePeakBytes] = [0, 0];
  const pages = pagesOf(count, (took) => {
    const began = performance.now();
    writePeakBytes = Math.max(writePeakBytes, heldBytes() - before);
    made += took + performance.now() - began;
  });
  const person = { ids: ['00000000-0000-4000-8400-000000000001'], name: null, affectedSide: null };
  const began = performance.now();
  const file = await writeRecord({ createdAt: new Date().toISOString(), person, diary: [], pages }, null, crypto);
  const writeMs = performance.now() - began - made;

  const readBegan = performance.now();
  const record = await readRecord(file, null, crypto);
  const readMs = performance.now() - readBegan;
  if (!record.ok) throw new Error(`recordFileCost requires a record that is read back, got ${record.error.kind}`);
  let [readPeakBytes, looked, sum] = [heldBytes() - before, 0, 0];
  const againBegan = performance.now();
  for (const part of record.value.sets()) {
    for (const { result } of part) if (result) sum += resultOf(result).curve.tMs.length;
    const lookBegan = performance.now();
    readPeakBytes = Math.max(readPeakBytes, heldBytes() - before);
    looked += performance.now() - lookBegan;
  }
  const againMs = performance.now() - againBegan - looked;
  if (sum === 0) throw new Error('recordFileCost requires curves to be there, got none');
  return { fileBytes: file.length, jsonBytes, writeMs, stringifyMs, readMs, againMs, parseMs, writePeakBytes, readPeakBytes };
}
