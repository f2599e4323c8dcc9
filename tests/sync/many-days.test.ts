import type { DocumentReference } from '@medplum/fhirtypes';
import { afterAll, expect, test } from 'vitest';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { addDays } from '../../src/symptoms/calendar-day.ts';
import { header, idOf, rep, result } from '../record/set-builders.ts';
import { wentWell } from '../record/went-well.ts';
import { dayOf, report } from '../symptoms/told.ts';
import { type Fault, fhirEndpoint } from './endpoint/fhir-endpoint.ts';
import { machine } from './machine.ts';

/** `EVENSIDE_SYNC_DAYS=500`: so many. */
const DAYS = Number(process.env.EVENSIDE_SYNC_DAYS ?? 150);
/** How many transactions are asked of the three layers: one in so many. The tests beside this one ask all. */
const VALIDATED_ONE_IN = 20;
/** Share of requests with which something goes wrong. */
const WRONG = 0.3;
const FAULTS: readonly Fault[] = [
  'cut-before',
  'cut-after',
  'cut-midway',
  { status: 409 },
  { status: 412 },
  { status: 429, retryAfter: '2' },
  { status: 500 },
  { status: 503 },
];

/** Chance that can be run again (mulberry32). */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const START = Date.parse('2026-05-01T08:00:00.000Z');
const DAY_MS = 86_400_000;
let stop: () => Promise<void> = async () => undefined;
afterAll(() => stop());

test(`after ${DAYS} days of cuts and retries, a patient and two therapists hold exactly the same records, none twice, none lost`, {
  timeout: 300_000,
}, async () => {
  const chance = seeded(20_260_501);
  let now = START;
  let posts = 0;
  let calm = false;
  const faults = new Map<string, number>();
  const server = await fhirEndpoint({
    clock: () => now,
    validates: () => {
      posts += 1;
      return posts % VALIDATED_ONE_IN === 1;
    },
    fault: () => {
      // A server's clock runs on from request to request, or stands still for some.
      now += Math.floor(chance() * 3) * 500;
      if (calm || chance() >= WRONG) return null;
      const fault = FAULTS[Math.floor(chance() * FAULTS.length)] ?? 'cut-before';
      const name = typeof fault === 'string' ? fault : String(fault.status);
      faults.set(name, (faults.get(name) ?? 0) + 1);
      return fault;
    },
  });
  stop = server.close;
  await server.repository.createResource({ resourceType: 'Patient', id: 'one' });
  const options = { chance, nowMs: () => now };
  const patient = await machine(server.base, 'Patient/one', 'own', options);
  const desks = [
    await machine(server.base, 'Patient/one', 'looked-after', options),
    await machine(server.base, 'Patient/one', 'looked-after', options),
  ];
  const everybody = [patient, ...desks];
  const written = new Set<string>();
  const setIds: string[] = [];
  let made = 0;
  const freshId = () => {
    made += 1;
    return idOf(100_000 + made);
  };
  const note = (id: string) => written.add(id);

  for (let day = 0; day < DAYS; day += 1) {
    now = START + day * DAY_MS;
    const at = (minute: number) => new Date(now + minute * 60_000).toISOString();
    const told = (): DiaryEntry => ({
      ...report(1, 9),
      id: freshId(),
      at: at(3),
      day: addDays(dayOf(1), day),
      intensity: day % 11,
    });
    if (chance() < 0.85) {
      const reps = [rep(1), rep(2)];
      const set: StoredSet = {
        ...header({ id: freshId(), startedAt: at(5) }),
        state: 'finished',
        reps,
        result: result(reps),
        edits: [],
      };
      await patient.has([set]);
      setIds.push(set.id);
      note(set.id);
      const entry = told();
      wentWell(await patient.store.diary.add([entry]));
      note(entry.id);
    }
    // A change by hand, on any machine that has the set, days after it was sent perhaps; half of them of a set that others may change at the same moment.
    for (const each of everybody) {
      const setId = chance() < 0.5 ? setIds.at(-2) : setIds[Math.floor(chance() * setIds.length)];
      if (setId === undefined || chance() >= 0.05 || !(await each.store.read(setId)).ok) continue;
      const id = freshId();
      wentWell(await each.store.edit({ id, schema: 1, setId, at: at(9), kind: 'add' }));
      note(id);
    }
    for (const each of desks) {
      if (chance() >= 0.1) continue;
      const entry = told();
      wentWell(await each.store.diary.add([entry]));
      note(entry.id);
    }
    // Patient and therapists come in any order, some at once, some days not at all; the clock of each request is the server's.
    const visits = everybody.map((each) => async () => {
      if (chance() < 0.3) return;
      await each.send();
      await each.takeIn();
    });
    if (chance() < 0.2) await Promise.all(visits.map((visit) => visit()));
    else for (const visit of visits) await visit();
  }
  // What is under way when the days end comes to its end.
  calm = true;
  now += DAY_MS;
  for (const each of everybody) wentWell(await each.send());
  for (const each of everybody) expect(wentWell(await each.takeIn())).toMatchObject({ conflicts: 0, refused: [], early: 0 });

  const here = await patient.all();
  const ids = [...here.sets.flatMap(({ id, edits }) => [id, ...edits.map((edit) => edit.id)]), ...here.diary.map(({ id }) => id)];
  expect(ids.toSorted()).toEqual([...written].toSorted());
  for (const each of desks) expect(await each.all()).toEqual(here);
  const held = server.repository
    .all('DocumentReference')
    .map((resource) => (resource as DocumentReference).identifier?.[0]?.value ?? '');
  expect(held.toSorted()).toEqual([...written].toSorted());
  expect(server.repository.all('Observation')).toHaveLength(here.sets.length);
  // The days were as bad as they were meant to be.
  expect([...faults.keys()]).toHaveLength(FAULTS.length);
  expect(Math.min(...faults.values())).toBeGreaterThan(DAYS / 25);
  expect(server.checked.bundles).toBeGreaterThan(DAYS / 50);
});
