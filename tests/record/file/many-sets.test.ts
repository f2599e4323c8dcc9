import { expect, test } from 'vitest';
import { openSetStore } from '../../../src/record/open-store.ts';
import { SELF } from '../../../src/record/person.ts';
import { fakeBrowser } from '../fake-browser.ts';
import { header, idOf, momentOf, rep, result } from '../set-builders.ts';
import { wentWell } from '../went-well.ts';
import { recordOf } from './written-record.ts';

test('more sets than are written at a time are all there, and told beforehand as they come', async () => {
  const store = wentWell(await openSetStore(fakeBrowser().page()));
  const sets = Array.from({ length: 350 }, (_, n) => ({
    ...header({ id: idOf(n + 1), startedAt: momentOf(n) }),
    state: 'finished' as const,
    reps: [rep(1)],
    result: result([rep(1)]),
    edits: [],
  }));
  const record = await recordOf(sets, []);
  const records = await store.records();
  const told = wentWell(await records.looked(SELF, record));
  expect(told.sets).toEqual({ fresh: 350, grown: 0, same: 0 });
  expect(wentWell(await records.taken({ kind: 'here', person: SELF }, record))).toEqual(told);
  const here = wentWell(await store.list({ limit: 999 }));
  expect(here.sets.map(({ id }) => id).toReversed()).toEqual(sets.map(({ id }) => id));
  expect(here.sets.every((set) => set.result?.count === sets[0]?.result.count)).toBe(true);
  expect(wentWell(await records.looked(SELF, record)).sets).toEqual({ fresh: 0, grown: 0, same: 350 });
});
