import type { Bundle, CarePlan, Observation, Resource } from '@medplum/fhirtypes';
import { expect, test } from 'vitest';
import { transactionBundle } from '../../src/fhir/bundles.ts';
import { DEFAULT_NAMING } from '../../src/fhir/naming.ts';
import { recordsOf } from '../../src/fhir/records-of.ts';
import { edit, idOf } from '../record/set-builders.ts';
import { counting, preparedOf } from './context.ts';
import { inMemoryServer } from './in-memory-server.ts';
import { livedRecords } from './lived-records.ts';

const lived = livedRecords();
const TYPES = ['Patient', 'Device', 'CarePlan', 'ServiceRequest', 'Observation', 'QuestionnaireResponse', 'DocumentReference'];
const transactionOf = (records: Parameters<typeof preparedOf>[0]): Bundle =>
  transactionBundle(preparedOf(records).prepared, counting());
const resourcesIn = <T extends Resource>({ entry }: Bundle): readonly T[] => (entry ?? []).map(({ resource }) => resource as T);
const idsOf = <T extends { readonly id: string }>(all: readonly T[]): readonly string[] => all.map(({ id }) => id).toSorted();

test('sent twice, everything is there once, its references lead to what the server holds, and the records come back', async () => {
  const server = inMemoryServer();
  const first = await server.send(transactionOf(lived));
  expect(first.every((status) => status.startsWith('201'))).toBe(true);
  const again = await server.send(transactionOf(lived));
  expect(again.every((status) => status.startsWith('200'))).toBe(true);
  let held = 0;
  const known = new Set<string>();
  const all: string[] = [];
  for (const type of TYPES) {
    const found = resourcesIn(await server.search(type));
    held += found.length;
    for (const { id } of found) known.add(`${type}/${id}`);
    all.push(JSON.stringify(found));
  }
  expect(held).toBe(first.length);
  const references = [...all.join('').matchAll(/"reference":"([^"]+)"/g)].map(([, reference]) => reference ?? '');
  expect(references.length).toBeGreaterThan(100);
  expect(references.filter((reference) => !known.has(reference))).toEqual([]);
  const found = recordsOf(await server.search('DocumentReference'), DEFAULT_NAMING);
  expect(found.refused).toEqual([]);
  expect([idsOf(found.sets), idsOf(found.diary)]).toEqual([idsOf(lived.sets), idsOf(lived.diary)]);
  expect(found.sets).toEqual(lived.sets.toSorted((a, b) => (a.startedAt < b.startedAt ? -1 : 1)));
});

test('a set changed by hand after it was sent is shown as changed, once; the change is a document of its own', async () => {
  const server = inMemoryServer();
  const [set] = lived.sets;
  if (!set) throw new Error('this test requires a set, got none');
  await server.send(transactionOf({ sets: [set], diary: [] }));
  const changed = { ...set, edits: [edit({ kind: 'strike', rep: { kind: 'measured', number: 1 } }, set.id)] };
  await server.send(transactionOf({ sets: [changed], diary: [] }));
  const shown = resourcesIn<Observation>(await server.search('Observation'));
  expect(shown.map(({ status, valueQuantity }) => [status, valueQuantity?.value])).toEqual([
    ['amended', set.reps.filter(({ complete }) => complete).length - 1],
  ]);
  // One who does not know of the change yet takes nothing back.
  await server.send(transactionOf({ sets: [set], diary: [] }));
  expect(resourcesIn<Observation>(await server.search('Observation')).map(({ status }) => status)).toEqual(['amended']);
  expect(recordsOf(await server.search('DocumentReference'), DEFAULT_NAMING).sets).toEqual([changed]);
});

test('a plan that another took the place of is revoked where it is held', async () => {
  const server = inMemoryServer();
  const plans = lived.diary.filter(({ kind }) => kind === 'prescription');
  await server.send(transactionOf({ sets: [], diary: plans.slice(0, 1) }));
  await server.send(transactionOf({ sets: [], diary: plans }));
  const held = resourcesIn<CarePlan>(await server.search('CarePlan'));
  expect(held.map(({ status }) => status).toSorted()).toEqual(['active', 'revoked']);
  expect(held.find(({ status }) => status === 'active')?.replaces?.[0]?.reference).toBe(
    `CarePlan/${held.find(({ status }) => status === 'revoked')?.id}`,
  );
});

test('two people on one server do not mix', async () => {
  const server = inMemoryServer();
  const [one, two] = lived.sets;
  if (!one || !two) throw new Error('this test requires two sets, got fewer');
  for (const [set, id] of [
    [one, idOf(701)],
    [two, idOf(702)],
  ] as const) {
    const { prepared } = preparedOf({ sets: [set], diary: [] }, { subject: { kind: 'own', id, name: null } });
    await server.send(transactionBundle(prepared, counting()));
  }
  const patients = resourcesIn(await server.search('Patient'));
  expect(patients).toHaveLength(2);
  const found = await Promise.all(
    patients.map(async ({ id }) =>
      recordsOf(await server.search('DocumentReference', { subject: `Patient/${id}` }), DEFAULT_NAMING).sets.map((set) => set.id),
    ),
  );
  expect(found.map((ids) => ids.length)).toEqual([1, 1]);
  expect(new Set(found.flat())).toEqual(new Set([one.id, two.id]));
});
