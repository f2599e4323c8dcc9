import * as v from 'valibot';
import { expect, test } from 'vitest';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { diaryEntryShape } from '../../src/record/diary-shape.ts';
import { exportFile } from '../../src/record/export-file.ts';
import { openSetStore } from '../../src/record/open-store.ts';
import { type Person, personShape } from '../../src/record/person.ts';
import { storedSetShape } from '../../src/record/stored-set-shape.ts';
import { everythingIn } from '../../src/screens/adapter/everything.ts';
import { clearance, entry, redFlags, report } from '../symptoms/told.ts';
import { fakeBrowser } from './fake-browser.ts';
import { edit, header, idOf, momentOf, rep, result } from './set-builders.ts';
import { wentWell } from './went-well.ts';

const at = '2026-05-09T10:00:00.000Z';

test('everything in the store goes out, and each part of it, as JSON, can be stored again', async () => {
  const browser = fakeBrowser();
  const opening = openSetStore(browser.page());
  const store = wentWell(await opening);
  const reps = [rep(1), rep(2)];
  // More sets than are read at a time.
  for (let n = 1; n <= 103; n += 1) {
    const head = header({ id: idOf(n), startedAt: momentOf(n) });
    wentWell(await store.begin(head));
    wentWell(await store.append(head, reps));
    wentWell(await store.end(head, { state: 'finished', result: result(reps) }));
  }
  wentWell(await store.edit(edit({ kind: 'strike', rep: { kind: 'measured', number: 2 } })));
  const link: DiaryEntry = {
    ...entry(1, 9),
    origin: 'example',
    kind: 'set-link',
    setId: idOf(2),
    prescriptionId: idOf(70),
    itemId: idOf(71),
  };
  const diary: readonly DiaryEntry[] = [link, report(2, 9), redFlags(3, 9), clearance(3, 10)];
  wentWell(await store.diary.add(diary));

  const out = JSON.parse(JSON.stringify(exportFile(wentWell(await everythingIn(opening)), at)));
  expect(Object.keys(out)).toEqual(['evenside', 'version', 'exportedAt', 'sets', 'diary', 'damaged']);
  expect([out.evenside, out.version, out.exportedAt, out.damaged]).toEqual(['export', 1, at, []]);
  expect(out.sets.map(({ id }: { id: string }) => id)).toEqual(Array.from({ length: 103 }, (_, i) => idOf(i + 1)));
  expect(out.sets.map(({ origin }: { origin: string }) => origin).slice(0, 3)).toEqual(['own', 'example', 'own']);
  for (const { origin: _, ...set } of out.sets) {
    expect(v.parse(storedSetShape, set)).toEqual(wentWell(await store.read(set.id)));
  }
  expect(out.sets[0].edits).toHaveLength(1);
  expect(out.diary.map((each: unknown) => v.parse(diaryEntryShape, each))).toEqual(diary);
  store.close();
});

test('what is stored but cannot be read is named, not left out in silence', () => {
  const damaged = [{ id: idOf(9), what: 'side: wrong' }];
  expect(exportFile({ sets: [], diary: [], damaged }, at).damaged).toEqual(damaged);
});

test('what goes out of somebody in a therapist’s list says whose it is', () => {
  const person: Person = {
    id: idOf(700),
    schema: 1,
    name: 'Ina Invented',
    affectedSide: 'left',
    notes: '',
    addedAt: at,
    changedAt: at,
    seenUntil: null,
  };
  const out = JSON.parse(JSON.stringify(exportFile({ sets: [], diary: [], damaged: [] }, at, person)));
  expect(v.parse(personShape, out.person)).toEqual(person);
});
