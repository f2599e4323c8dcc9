import { KEY_BYTES, NONCE_BYTES } from './key-sizes.ts';

/** A row of a table, whatever its shape. */
type Row = Readonly<Record<string, unknown>>;

/** What of a table's rows stays readable: the parts that keys and indexes need. */
export interface RowForm {
  readonly table: string;
  readonly readable: readonly string[];
  /** The key that the database gives when a row is added, after it is sealed. Null: the row brings its key along. */
  readonly givenKey: string | null;
}

/** Hides bytes and opens them, at once; loaded where a lock is on only. */
export interface RowCipher {
  readonly seal: (key: Uint8Array, nonce: Uint8Array, plain: Uint8Array, bound: Uint8Array) => Uint8Array;
  readonly open: (key: Uint8Array, nonce: Uint8Array, sealed: Uint8Array, bound: Uint8Array) => Uint8Array | null;
}

/** What rows are sealed and opened with. */
export interface RowKey {
  readonly key: Uint8Array;
  readonly cipher: RowCipher;
}

/** How rows of earlier shapes of the database become rows of now. */
export interface RowShapes {
  /** Version of the database. */
  readonly newest: number;
  readonly upgraded: (table: string, row: unknown, from: number) => unknown;
}

/** The first of the sealed bytes: how the rest is laid out. 1: nonce, hidden JSON `{"v", "row"}`, tag. */
const LAYOUT = 1;

const utf8 = new TextEncoder();
const text = new TextDecoder('utf-8', { fatal: true });

const isRow = (value: unknown): value is Row => typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether a row as it lies in the database is a sealed one. No row of ours has a part `sealed` otherwise. */
export const isSealed = (row: unknown): row is Row & { readonly sealed: Uint8Array } =>
  isRow(row) && row.sealed instanceof Uint8Array;

/**
 * The readable parts and the table's name as bytes. They are bound to the hidden ones, so that no row can be given the name, place or state of another.
 * The key that the database gives is not known in time; such a row is bound by its other parts.
 */
function boundOf({ table, givenKey }: RowForm, readable: Row): Uint8Array {
  const parts = Object.entries(readable).filter(([name]) => name !== givenKey);
  return utf8.encode(JSON.stringify(['evenside', LAYOUT, table, parts.sort(([a], [b]) => (a < b ? -1 : 1))]));
}

/**
 * Seals a row of JSON data; one that is sealed already, which could not be opened, stays as it is.
 * @param chance fills bytes at random, for a nonce of its own each time. By chance two of 2^32 rows share one with less than 2^-32, which NIST SP 800-38D,
 *   8.3, allows a key; a store has some thousands
 */
export function sealedRow(
  { key, cipher }: RowKey,
  form: RowForm,
  row: unknown,
  version: number,
  chance: (bytes: Uint8Array<ArrayBuffer>) => void,
): unknown {
  if (key.length !== KEY_BYTES) throw new Error(`sealedRow requires a key of ${KEY_BYTES} bytes, got ${key.length}`);
  if (!isRow(row) || isSealed(row)) return row;
  const readable: Record<string, unknown> = {};
  const hidden: Record<string, unknown> = {};
  for (const [name, value] of Object.entries(row)) (form.readable.includes(name) ? readable : hidden)[name] = value;
  const nonce = new Uint8Array(NONCE_BYTES);
  chance(nonce);
  const bytes = cipher.seal(key, nonce, utf8.encode(JSON.stringify({ v: version, row: hidden })), boundOf(form, readable));
  const sealed = new Uint8Array(1 + NONCE_BYTES + bytes.length);
  sealed[0] = LAYOUT;
  sealed.set(nonce, 1);
  sealed.set(bytes, 1 + NONCE_BYTES);
  return { ...readable, sealed };
}

/**
 * The row that was sealed, in the shape of now. One that is not sealed is given back as it is, and so is one that does not open: it then has not the shape
 * that is read, and is told of as damaged.
 */
export function openedRow({ key, cipher }: RowKey, form: RowForm, row: unknown, shapes: RowShapes): unknown {
  if (!isSealed(row)) return row;
  const { sealed, ...readable } = row;
  if (sealed[0] !== LAYOUT) return row;
  const nonce = sealed.subarray(1, 1 + NONCE_BYTES);
  const plain =
    nonce.length === NONCE_BYTES ? cipher.open(key, nonce, sealed.subarray(1 + NONCE_BYTES), boundOf(form, readable)) : null;
  if (!plain) return row;
  // What opens was written by this program: the tag says so.
  const { v, row: hidden } = JSON.parse(text.decode(plain)) as { readonly v: number; readonly row: Row };
  const whole = { ...readable, ...hidden };
  return v < shapes.newest ? shapes.upgraded(form.table, whole, v) : whole;
}
