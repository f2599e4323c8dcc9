import type { DBCore, DBCoreCursor, DBCoreTable, Middleware } from 'dexie';
import { LOCK_TABLE } from './lock-place.ts';
import { openedRow, type RowForm, type RowShapes, sealedRow } from './sealed-row.ts';
import { StoreLockedError, type Vault } from './vault.ts';

/** Under every part of Dexie itself, so that none of them meets a sealed row. */
const LOWEST = -10;

function formOf({ name, schema }: DBCoreTable): RowForm {
  const { primaryKey, indexes } = schema;
  const readable = new Set([primaryKey, ...indexes].flatMap(({ keyPath }) => keyPath ?? []));
  const key = primaryKey.autoIncrement ? primaryKey.keyPath : null;
  return { table: name, readable: [...readable], givenKey: typeof key === 'string' ? key : null };
}

/** A cursor whose rows are opened when they are looked at. */
function openedCursor(cursor: DBCoreCursor, opened: (row: unknown) => unknown): DBCoreCursor {
  let last: { readonly raw: unknown; readonly row: unknown } | null = null;
  return new Proxy(cursor, {
    get(target, name, through) {
      const found: unknown = Reflect.get(target, name, target);
      if (name === 'value') {
        if (last?.raw !== found) last = { raw: found, row: opened(found) };
        return last?.row;
      }
      // `next` gives the cursor itself; the browser's own functions answer only when they are called on its own cursor.
      return typeof found === 'function' ? found.bind(name === 'next' ? through : target) : found;
    },
  });
}

function sealedTable(table: DBCoreTable, vault: Vault, shapes: RowShapes, chance: (bytes: Uint8Array<ArrayBuffer>) => void) {
  const form = formOf(table);
  const now = () => {
    const access = vault.access();
    if (access.kind === 'locked') throw new StoreLockedError('the stored records are locked');
    return access.kind === 'keyed' ? access : null;
  };
  const opened = (row: unknown): unknown => {
    const keyed = now();
    return keyed ? openedRow(keyed, form, row, shapes) : row;
  };
  const put = (row: unknown): unknown => {
    const keyed = now();
    return keyed?.seals ? sealedRow(keyed, form, row, shapes.newest, chance) : row;
  };
  /** Refuses while it is locked, also what would find nothing. */
  const unlocked = <A, T>(call: (asked: A) => T) => {
    return (asked: A): T => {
      now();
      return call(asked);
    };
  };
  const through: DBCoreTable = {
    ...table,
    mutate: unlocked((asked) => table.mutate('values' in asked ? { ...asked, values: asked.values.map(put) } : asked)),
    get: unlocked((asked) => table.get(asked).then(opened)),
    getMany: unlocked((asked) => table.getMany(asked).then((rows) => rows.map(opened))),
    query: unlocked((asked) =>
      table.query(asked).then((found) => (asked.values ? { ...found, result: found.result.map(opened) } : found)),
    ),
    openCursor: unlocked((asked) =>
      table.openCursor(asked).then((cursor) => (cursor && asked.values ? openedCursor(cursor, opened) : cursor)),
    ),
    count: unlocked((asked) => table.count(asked)),
  };
  return through;
}

/** Seals what Dexie writes and opens what it reads, as `vault` says, so that nothing above knows of it. */
export const sealing = (
  vault: Vault,
  shapes: RowShapes,
  chance: (bytes: Uint8Array<ArrayBuffer>) => void,
): Middleware<DBCore> => ({
  stack: 'dbcore',
  name: 'sealing',
  level: LOWEST,
  create: (down) => ({
    ...down,
    table: (name) => (name === LOCK_TABLE ? down.table(name) : sealedTable(down.table(name), vault, shapes, chance)),
  }),
});
