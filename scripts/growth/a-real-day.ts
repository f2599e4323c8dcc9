import { gzipSync } from 'node:zlib';
import { measured } from '../../tests/fhir/lived-records.ts';
import { idOf } from '../../tests/record/set-builders.ts';
import { wentWell } from '../../tests/record/went-well.ts';
import { checkIn, momentOf, redFlags, report } from '../../tests/symptoms/told.ts';
import { fhirEndpoint } from '../../tests/sync/endpoint/fhir-endpoint.ts';
import { machine } from '../../tests/sync/machine.ts';

/** What one patient's day costs on the wire, sent and taken in once, with sets as the camera measures them. */
export interface DayCost {
  readonly records: number;
  readonly posts: number;
  readonly sentBytes: number;
  readonly sentGzipBytes: number;
  readonly gets: number;
  readonly takenBytes: number;
}

/** A day of eight sets, a report before and after each, the morning's questions and the red flags. */
export async function aRealDay(): Promise<DayCost> {
  let gzip = 0;
  const server = await fhirEndpoint({
    fault: ({ method, body }) => {
      if (method === 'POST') gzip += gzipSync(JSON.stringify(body)).length;
      return null;
    },
  });
  await server.repository.createResource({ resourceType: 'Patient', id: 'one' });
  const patient = await machine(server.base, 'Patient/one', 'own');
  const desk = await machine(server.base, 'Patient/one', 'looked-after');
  const results = ['taps-right-weak.json', 'taps-left-quick.json', 'slr-left-kneebend.json', 'knee-right-straighten.json'].map(
    measured,
  );
  const sets = Array.from({ length: 8 }, (_, i) => {
    const done = results[i % results.length];
    if (!done) throw new Error('aRealDay requires results, got none');
    return {
      id: idOf(i + 1),
      schema: 2 as const,
      startedAt: momentOf(3, 9 + i),
      exercise: done.exercise,
      side: done.side,
      targetReps: 10,
      person: 'me',
      source: 'camera' as const,
      model: 'full' as const,
      state: 'finished' as const,
      reps: done.reps,
      result: done,
      edits: [],
    };
  });
  await patient.has(sets);
  const told = sets.flatMap(({ id }, i) => [
    report(3, 9 + i, { moment: 'before-set' }),
    report(3, 9 + i, { moment: 'after-set', setId: id, intensity: 2, kinds: ['pain'] }),
  ]);
  wentWell(await patient.store.diary.add([checkIn(3, 8), redFlags(3, 8, {}), ...told]));
  const sent = wentWell(await patient.send());
  wentWell(await desk.takeIn());
  await server.close();
  const of = (method: string) => server.seen.filter((each) => each.method === method);
  return {
    records: sent.confirmed,
    posts: of('POST').length,
    sentBytes: of('POST').reduce((sum, { bytesIn }) => sum + bytesIn, 0),
    sentGzipBytes: gzip,
    gets: of('GET').length,
    takenBytes: of('GET').reduce((sum, { bytesOut }) => sum + bytesOut, 0),
  };
}
