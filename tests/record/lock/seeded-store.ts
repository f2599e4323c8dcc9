import type { Person } from '../../../src/record/person.ts';
import type { Store } from '../../../src/record/store.ts';
import { deg, ms } from '../../../src/units.ts';
import { clearance, redFlags, report } from '../../symptoms/told.ts';
import { edit, header, idOf, momentOf, rep, result } from '../set-builders.ts';
import { wentWell } from '../went-well.ts';

/** Angles that nothing else in a store equals. */
const angleOf = (n: number): number => 10 + n * 1.03125 + 0.0009765625;

/** Puts something into every table: sets that ended with and without a result, changes by hand, a diary. */
export async function fill(store: Store, sets: number): Promise<void> {
  const reps = (n: number) =>
    [1, 2, 3].map((number) => rep(number, { peakDeg: deg(angleOf(n * 3 + number)), holdMs: ms(211.5) }));
  for (let n = 1; n <= sets; n += 1) {
    const head = header({ id: idOf(n), startedAt: momentOf(n), source: 'file', fileName: `kitchen ${n}.mp4` });
    const [first, ...rest] = reps(n);
    wentWell(await store.begin(head));
    wentWell(await store.append(head, first ? [first, ...rest] : []));
    const ending = n % 3 === 0 ? { state: 'interrupted', result: null } : { state: 'finished', result: result(reps(n)) };
    wentWell(await store.end(head, ending as Parameters<Store['end']>[1]));
    wentWell(await store.edit({ ...edit({ kind: 'add' }, head.id), note: `a cough in set ${n}` }));
  }
  const person: Person = {
    id: idOf(7001),
    schema: 1,
    name: 'Wilma Beispiel (invented)',
    affectedSide: 'right',
    notes: 'calls on Fridays',
    addedAt: momentOf(1),
    changedAt: momentOf(1),
    seenUntil: null,
  };
  wentWell(await store.people.save(person));
  wentWell(await store.of(person.id).diary.add([report(3, 9, { intensity: 6, kinds: ['numbness'] })]));
  wentWell(await store.people.facts(person.id, 'UTC'));
  wentWell(
    await store.diary.add([
      redFlags(2, 9, { 'bladder-bowel': 'yes' }),
      { ...clearance(2, 10), note: 'the doctor at the corner said go on' },
      ...Array.from({ length: sets }, (_, n) =>
        report(2 + (n % 20), 11, { intensity: 7, kinds: ['tingling'], places: [{ region: 'calf-outer', side: 'left' }] }),
      ),
    ]),
  );
}

/** All that the store tells. */
export async function told(store: Store): Promise<unknown> {
  const { sets, damaged } = wentWell(await store.list({ limit: 1000 }));
  return { sets, damaged, diary: wentWell(await store.diary.all()), people: wentWell(await store.people.list()) };
}
