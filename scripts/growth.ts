/** `npm run growth [-- PATIENTS...]`: what sync with a FHIR server costs as the number of patients doubles. In-memory router of the tests, on loopback; some minutes. */
import { cpus } from 'node:os';
import { DEFAULT_NAMING } from '../src/fhir/naming.ts';
import { ok } from '../src/result.ts';
import { OPEN } from '../src/sync/access.ts';
import { documentsUrl, eachPage } from '../src/sync/document-pages.ts';
import { fhirServer } from '../src/sync/fhir-server.ts';
import { fhirEndpoint } from '../tests/sync/endpoint/fhir-endpoint.ts';
import { aRealDay } from './growth/a-real-day.ts';
import { bundleOf, DAYS, START, TWO_YEARS } from './growth/seed-patients.ts';

/** Numbers of patients, rising; all of them unless some are named. */
const named = process.argv.slice(2).map(Number);
if (!named.every((n, i) => Number.isInteger(n) && n > (named[i - 1] ?? 0)))
  throw new Error(`growth requires rising numbers of patients, got ${process.argv.slice(2).join(' ')}`);
const STEPS = named.length > 0 ? named : [250, 500, 1000, 2000];
/** Patients whom one therapist looks after. Chosen. */
const OF_ONE_DESK = 30;
const TIMES = 5;
/** As many as fit into one transaction of the program. */
const SETS_A_BUNDLE = 24;

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
async function timed(body: () => Promise<unknown>): Promise<number> {
  const took: number[] = [];
  for (let i = 0; i < TIMES; i += 1) {
    const before = performance.now();
    await body();
    took.push(performance.now() - before);
  }
  return median(took);
}
const say = (line: string) => process.stdout.write(`${line}\n`);

let now = START;
const endpoint = await fhirEndpoint({ clock: () => now, validates: () => false });
const around = { http: fetch, nowMs: () => now, chance: () => 0, wait: async () => undefined, newId: () => '' };
const server = fhirServer(around, endpoint.base, OPEN);
const post = async (body: string) => {
  const answer = await fetch(endpoint.base, { method: 'POST', body });
  await answer.arrayBuffer();
  if (!answer.ok) throw new Error(`post requires the endpoint to take a bundle, got ${answer.status}`);
};
const patient = (n: number) => `Patient/p${n}`;
const taken = (n: number, since: string | null) =>
  eachPage(server, documentsUrl(server, DEFAULT_NAMING, patient(n), since), async () => ok(undefined));

say(`${cpus().length} cores, ${cpus()[0]?.model ?? ''}, Node ${process.version}; medians of ${TIMES}`);
say(
  'patients | resources | seeded in s | heap MB | first page of patients ms | one history ms | requests | kB | day of a desk ms | requests | kB',
);
let there = 0;
for (const patients of STEPS) {
  const began = performance.now();
  for (; there < patients; there += 1) {
    await endpoint.repository.createResource({ resourceType: 'Patient', id: `p${there}`, name: [{ text: `Invented ${there}` }] });
    now = TWO_YEARS[0] ?? START;
    for (let i = 0; i < TWO_YEARS.length; i += SETS_A_BUNDLE)
      await post(bundleOf(patient(there), TWO_YEARS.slice(i, i + SETS_A_BUNDLE)));
  }
  const seededS = (performance.now() - began) / 1000;
  now = START + DAYS * 86_400_000 + patients * 86_400_000;
  const since = new Date(now - 120_000).toISOString();
  for (let n = 0; n < OF_ONE_DESK; n += 1) await post(bundleOf(patient(n), [now]));
  const page = await timed(async () => (await fetch(`${endpoint.base}/Patient?_count=20`)).arrayBuffer());
  const cost = async (body: () => Promise<unknown>) => {
    const from = endpoint.seen.length;
    const ms = await timed(body);
    const seen = endpoint.seen.slice(from);
    return [
      ms.toFixed(0),
      seen.length / TIMES,
      (seen.reduce((sum, { bytesOut }) => sum + bytesOut, 0) / TIMES / 1000).toFixed(0),
    ].join(' | ');
  };
  const history = await cost(() => taken(there - 1, null));
  const day = await cost(async () => {
    for (let n = 0; n < OF_ONE_DESK; n += 1) await taken(n, since);
  });
  const resources = ['Patient', 'Device', 'Observation', 'DocumentReference'].reduce(
    (sum, type) => sum + endpoint.repository.all(type).length,
    0,
  );
  const heap = process.memoryUsage().heapUsed / 1e6;
  say(`${patients} | ${resources} | ${seededS.toFixed(0)} | ${heap.toFixed(0)} | ${page.toFixed(1)} | ${history} | ${day}`);
}
await endpoint.close();
say(`a real day of one patient: ${JSON.stringify(await aRealDay())}`);
