import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { DATABASE_NAME } from '../../src/record/database.ts';

/** A whole database as an earlier version of the program left it: written by that version itself, row by row. */
export interface OldDatabase {
  /** As the browser counts it: ten times the program's number. */
  readonly version: number;
  /** What its lock opens with; left out: it has none. */
  readonly passphrase?: string;
  readonly tables: Readonly<Record<string, OldTable>>;
}

interface OldTable {
  readonly keyPath: string | string[];
  readonly autoIncrement: boolean;
  readonly indexes: readonly {
    readonly name: string;
    readonly keyPath: string | string[];
    readonly unique: boolean;
    readonly multiEntry: boolean;
  }[];
  readonly rows: readonly object[];
}

/** JSON has no bytes: sealed rows carry theirs in base 64. */
function bytesBack(_: string, value: unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if ('$bytes' in value) return new Uint8Array(Buffer.from(String(value.$bytes), 'base64'));
  if ('$buffer' in value) return new Uint8Array(Buffer.from(String(value.$buffer), 'base64')).buffer;
  return value;
}

/** @param name of the file in `fixtures`, such as `v5` or `v7-locked` */
export const oldDatabase = (name: string): OldDatabase =>
  JSON.parse(readFileSync(join(import.meta.dirname, 'fixtures', `${name}.json`), 'utf8'), bytesBack);

/** Makes it in a browser, with nothing of the present program. */
export function putThere(indexedDB: IDBFactory, { version, tables }: OldDatabase): Promise<void> {
  return new Promise((resolve, reject) => {
    const opening = indexedDB.open(DATABASE_NAME, version);
    opening.onerror = () => reject(opening.error);
    opening.onupgradeneeded = () => {
      for (const [name, { keyPath, autoIncrement, indexes, rows }] of Object.entries(tables)) {
        const table = opening.result.createObjectStore(name, { keyPath, autoIncrement });
        for (const { name: index, keyPath: path, ...options } of indexes) table.createIndex(index, path, options);
        for (const row of rows) table.add(row);
      }
    };
    opening.onsuccess = () => {
      opening.result.close();
      resolve();
    };
  });
}
