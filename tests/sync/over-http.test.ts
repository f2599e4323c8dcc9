import type { Bundle, DocumentReference } from '@medplum/fhirtypes';
import { afterEach, describe, expect, test } from 'vitest';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { livedRecords } from '../fhir/lived-records.ts';
import { edit, header, idOf, momentOf, rep, result } from '../record/set-builders.ts';
import { wentWell } from '../record/went-well.ts';
import { clearance, report } from '../symptoms/told.ts';
import { type EndpointOptions, type Fault, fhirEndpoint } from './endpoint/fhir-endpoint.ts';
import { type MachineOptions, machine } from './machine.ts';

const closing: (() => Promise<void>)[] = [];
afterEach(async () => {
  for (const close of closing.splice(0)) await close();
});
async function endpoint(options: EndpointOptions = {}) {
  const made = await fhirEndpoint(options);
  closing.push(made.close);
  await made.repository.createResource({ resourceType: 'Patient', id: 'one' });
  return made;
}
const PATIENT = 'Patient/one';
const TYPES = ['Device', 'CarePlan', 'ServiceRequest', 'Observation', 'QuestionnaireResponse', 'DocumentReference'];
const own = (base: string, options: MachineOptions = {}) => machine(base, PATIENT, 'own', options);
const desk = (base: string, options: MachineOptions = {}) => machine(base, PATIENT, 'looked-after', options);

const smallSet = (n: number, over: Partial<StoredSet> = {}): StoredSet => {
  const reps = [rep(1), rep(2)];
  return {
    ...header({ id: idOf(n), startedAt: momentOf(n) }),
    state: 'finished',
    reps,
    result: result(reps),
    edits: [],
    ...over,
  };
};
/** Faults one after the other, then none. */
const inOrder = (faults: readonly Fault[]) => {
  const left = [...faults];
  return () => left.shift() ?? null;
};
const identifiers = (all: readonly unknown[]) =>
  (all as readonly DocumentReference[]).map(({ identifier }) => identifier?.[0]?.value);

describe('records over HTTP', () => {
  test('what a patient did is on the desk, whole, every resource valid; and nothing is sent or taken twice', async () => {
    const server = await endpoint();
    const patient = await own(server.base);
    const { sets, diary } = livedRecords();
    await patient.has(sets);
    wentWell(await patient.store.diary.add(diary));
    const sent = wentWell(await patient.send());
    expect(sent).toEqual({ confirmed: sets.length + 2 + diary.length, unwanted: [] });
    const held = TYPES.flatMap((type) => server.repository.all(type));
    expect(held.length).toBeGreaterThan(40);
    expect(server.checked.bundles).toBe(server.seen.filter(({ method }) => method === 'POST').length);
    expect(server.checked.resources).toBeGreaterThanOrEqual(held.length);
    const therapist = await desk(server.base);
    expect(wentWell(await therapist.takeIn())).toEqual({
      fresh: sets.length + diary.length,
      grown: 0,
      conflicts: 0,
      refused: [],
      early: 0,
    });
    expect(await therapist.all()).toEqual(await patient.all());
    const requests = server.seen.length;
    expect(wentWell(await patient.send())).toEqual({ confirmed: 0, unwanted: [] });
    expect(wentWell(await therapist.send())).toEqual({ confirmed: 0, unwanted: [] });
    expect(server.seen.length).toBe(requests);
    expect(wentWell(await therapist.takeIn())).toMatchObject({ fresh: 0, grown: 0, conflicts: 0 });
  });

  test('an invalid resource is refused by the endpoint, and nothing of its transaction is kept', async () => {
    const server = await endpoint();
    const entry = (resource: object) => ({ resource, request: { method: 'POST', url: 'Observation' } });
    const good = { resourceType: 'Observation', status: 'final', code: { text: 'x' } };
    const body = JSON.stringify({
      resourceType: 'Bundle',
      type: 'transaction',
      entry: [entry(good), entry({ ...good, status: 'done' })],
    });
    expect((await fetch(server.base, { method: 'POST', body })).status).toBe(422);
    expect(server.repository.all('Observation')).toEqual([]);
  });

  test('a transaction that was done while its answer was cut off is sent again and adds nothing', async () => {
    const server = await endpoint({ fault: inOrder(['cut-after', 'cut-midway', 'cut-before']) });
    const patient = await own(server.base);
    await patient.has([smallSet(1), smallSet(2)]);
    expect(wentWell(await patient.send())).toEqual({ confirmed: 2, unwanted: [] });
    expect(server.seen.map(({ status }) => status)).toEqual(['cut', 'cut', 'cut', 200]);
    expect(identifiers(server.repository.all('DocumentReference')).toSorted()).toEqual([idOf(1), idOf(2)]);
    expect(server.repository.all('Observation')).toHaveLength(2);
  });

  test('a page that closes between the answer and its note sends again and adds nothing', async () => {
    const server = await endpoint();
    const patient = await own(server.base);
    await patient.has([smallSet(1)]);
    const { sync } = patient;
    const before = wentWell(await sync.connection(patient.person));
    wentWell(await patient.send());
    wentWell(await sync.disconnect(patient.person));
    if (before) wentWell(await sync.save(before));
    expect(wentWell(await patient.send())).toEqual({ confirmed: 1, unwanted: [] });
    expect(server.repository.all('DocumentReference')).toHaveLength(1);
  });

  test('429, 409 and 500 are waited for, as long as the server says and longer each time', async () => {
    const waits: number[] = [];
    const faults = [
      { status: 429, retryAfter: '7' },
      { status: 409 },
      { status: 500 },
      { status: 503, retryAfter: '3' },
    ] as const;
    const server = await endpoint({ fault: inOrder(faults) });
    const patient = await own(server.base, { onWait: (ms) => waits.push(ms) });
    await patient.has([smallSet(1)]);
    expect(wentWell(await patient.send())).toEqual({ confirmed: 1, unwanted: [] });
    expect(waits).toEqual([7500, 1000, 2000, 7000]);
  });

  test('a server that stays away is given up for now; everything still waits, and goes later', async () => {
    let away = true;
    const server = await endpoint({ fault: () => (away ? 'cut-before' : null) });
    const patient = await own(server.base);
    await patient.has([smallSet(1)]);
    expect(await patient.send()).toEqual({ ok: false, error: { kind: 'unreachable' } });
    expect(wentWell(await patient.sync.waiting(patient.person, 9)).ids).toEqual(new Set([idOf(1)]));
    away = false;
    expect(wentWell(await patient.send())).toEqual({ confirmed: 1, unwanted: [] });
  });

  test('one who may not sign in is told so at once', async () => {
    const server = await endpoint({ fault: () => ({ status: 401 }) });
    const patient = await own(server.base);
    await patient.has([smallSet(1)]);
    expect(await patient.send()).toEqual({ ok: false, error: { kind: 'not-allowed', status: 401 } });
    expect(server.seen).toHaveLength(1);
  });

  test('a record that the server does not want holds up no other, and still waits', async () => {
    const unwanted = ({ body }: { readonly body: unknown }) =>
      JSON.stringify((body as Bundle | undefined)?.entry ?? []).includes(`"${idOf(3)}"`) ? { status: 412 } : null;
    const server = await endpoint({ fault: unwanted });
    const patient = await own(server.base);
    await patient.has([1, 2, 3, 4, 5].map((n) => smallSet(n)));
    const sent = wentWell(await patient.send());
    expect(sent.confirmed).toBe(4);
    expect(sent.unwanted).toEqual([{ ids: [idOf(3)], why: { kind: 'condition', detail: 'fault 412' } }]);
    expect(wentWell(await patient.sync.waiting(patient.person, 9)).ids).toEqual(new Set([idOf(3)]));
  });

  test('a change by hand that comes after its set is joined to it, and one made at the desk comes back', async () => {
    const server = await endpoint();
    const [patient, therapist] = [await own(server.base), await desk(server.base)];
    await patient.has([smallSet(1)]);
    wentWell(await patient.send());
    wentWell(await therapist.takeIn());
    wentWell(await patient.store.edit(edit({ kind: 'add' }, idOf(1))));
    wentWell(await therapist.store.edit(edit({ kind: 'strike', rep: { kind: 'measured', number: 2 } }, idOf(1))));
    wentWell(await patient.send());
    expect(wentWell(await therapist.takeIn())).toMatchObject({ fresh: 0, grown: 1, early: 0 });
    wentWell(await therapist.send());
    expect(wentWell(await patient.takeIn())).toMatchObject({ grown: 1 });
    const here = await patient.all();
    expect(here.sets[0]?.edits).toHaveLength(2);
    expect(await therapist.all()).toEqual(here);
    expect(server.repository.all('Observation')).toHaveLength(1);
  });

  test('what was typed arrives word for word, in the diary and in a change by hand; a therapist’s own notes stay on the desk', async () => {
    const server = await endpoint();
    const [patient, therapist] = [await own(server.base), await desk(server.base)];
    const ours = wentWell(await therapist.people.read(therapist.person));
    wentWell(await therapist.people.save({ ...ours, notes: 'Only for the therapist: prefers mornings.' }));
    const note = 'Dr Muster (invented): “a cold”, go on\nin two days 👍🏽 =1+1 <b>';
    await patient.has([smallSet(1)]);
    wentWell(await patient.store.diary.add([{ ...clearance(4, 12), note }]));
    wentWell(await patient.store.edit({ ...edit({ kind: 'add' }, idOf(1)), note: 'the camera was late' }));
    wentWell(await patient.send());
    wentWell(await therapist.takeIn());
    // The desk's own entries go the same way, its notes do not.
    wentWell(await therapist.store.diary.add([{ ...clearance(5, 12), note: 'seen on a call' }]));
    wentWell(await therapist.send());
    wentWell(await patient.takeIn());
    const here = await therapist.all();
    expect(here.diary.map((entry) => entry.kind === 'clearance' && entry.note).toSorted()).toEqual(
      [note, 'seen on a call'].toSorted(),
    );
    expect(here.sets[0]?.edits.map((each) => each.note)).toEqual(['the camera was late']);
    expect(await patient.all()).toEqual(here);
    expect(wentWell(await therapist.people.read(therapist.person))).toMatchObject({
      notes: 'Only for the therapist: prefers mornings.',
    });
    const held = TYPES.flatMap((type) => server.repository.all(type)).flatMap((resource) => [
      JSON.stringify(resource),
      ...(resource.resourceType === 'DocumentReference'
        ? [Buffer.from((resource as DocumentReference).content?.[0]?.attachment?.data ?? '', 'base64').toString('utf8')]
        : []),
    ]);
    // That such texts would be found: the patient's is.
    expect(held.some((text) => text.includes('the camera was late'))).toBe(true);
    expect(held.filter((text) => text.includes('prefers mornings'))).toEqual([]);
  });

  test('two therapists at once: both have all, and what both write is there once', async () => {
    const server = await endpoint();
    const patient = await own(server.base);
    await patient.has([1, 2, 3].map((n) => smallSet(n)));
    wentWell(await patient.send());
    const desks = await Promise.all([desk(server.base), desk(server.base)]);
    await Promise.all(desks.map(async (each) => wentWell(await each.takeIn())));
    const shared = report(3, 9);
    for (const [i, each] of desks.entries()) wentWell(await each.store.diary.add([shared, report(4 + i, 9)]));
    await Promise.all(desks.map(async (each) => wentWell(await each.send())));
    await Promise.all([...desks, patient].map(async (each) => wentWell(await each.takeIn())));
    const here = await patient.all();
    expect([here.sets.length, here.diary.length]).toEqual([3, 3]);
    for (const each of desks) expect(await each.all()).toEqual(here);
    const held = identifiers(server.repository.all('DocumentReference'));
    expect(held).toHaveLength(6);
    expect(new Set(held).size).toBe(6);
  });

  test('an entry that stands here under the same id with other content stays, and is counted', async () => {
    const server = await endpoint();
    const [patient, therapist] = [await own(server.base), await desk(server.base)];
    const told = report(3, 9);
    wentWell(await patient.store.diary.add([told]));
    wentWell(await therapist.store.diary.add([{ ...told, intensity: 7 }]));
    wentWell(await patient.send());
    expect(wentWell(await therapist.takeIn())).toMatchObject({ fresh: 0, conflicts: 1 });
    expect((await therapist.all()).diary).toEqual([{ ...told, intensity: 7 }]);
  });

  test('more than one page is read, a cut between two goes on where it was, and nobody else is asked', async () => {
    let [pages, cutAt] = [0, 2];
    const fault = ({ method }: { readonly method: string }) => {
      if (method !== 'GET') return null;
      pages += 1;
      return pages > cutAt ? ('cut-before' as const) : null;
    };
    let now = Date.parse('2026-06-01T08:00:00.000Z');
    const server = await endpoint({ fault, validates: () => false, clock: () => now });
    const patient = await own(server.base);
    for (let part = 0; part < 4; part += 1) {
      await patient.has(Array.from({ length: 40 }, (_, i) => smallSet(1 + part * 40 + i)));
      wentWell(await patient.send());
      now += 3_600_000;
    }
    const therapist = await desk(server.base);
    expect(await therapist.takeIn()).toEqual({ ok: false, error: { kind: 'unreachable' } });
    expect((await therapist.all()).sets).toHaveLength(100);
    cutAt = Number.POSITIVE_INFINITY;
    const rest = wentWell(await therapist.takeIn());
    expect(rest.fresh).toBe(60);
    expect(await therapist.all()).toEqual(await patient.all());
  });

  test('the person of another is neither read nor written', async () => {
    const server = await endpoint();
    await server.repository.createResource({ resourceType: 'Patient', id: 'two' });
    const [one, two] = [await own(server.base), await machine(server.base, 'Patient/two', 'own')];
    await one.has([smallSet(1)]);
    await two.has([smallSet(2)]);
    wentWell(await one.send());
    wentWell(await two.send());
    const therapist = await desk(server.base);
    wentWell(await therapist.takeIn());
    expect((await therapist.all()).sets.map(({ id }) => id)).toEqual([idOf(1)]);
  });

  test('a set that runs, and one that is invented, stay here', async () => {
    const server = await endpoint();
    const patient = await own(server.base);
    wentWell(await patient.store.begin(header({ id: idOf(1) })));
    await patient.has([smallSet(2, { source: 'example' })]);
    wentWell(await patient.store.diary.add([report(3, 9, { origin: 'example' })]));
    expect(wentWell(await patient.send())).toEqual({ confirmed: 0, unwanted: [] });
    expect(server.seen).toHaveLength(0);
  });
});
