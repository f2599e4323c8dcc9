import fc from 'fast-check';
import { expect, test } from 'vitest';
import { collectionBundle, definitionsBundle, transactionBundle } from '../../src/fhir/bundles.ts';
import { DEFAULT_NAMING } from '../../src/fhir/naming.ts';
import { anyRecords } from './any-records.ts';
import { counting, preparedOf } from './context.ts';
import { livedRecords } from './lived-records.ts';
import { faultsOf } from './validate/all-layers.ts';

const at = '2026-05-09T10:00:00.000Z';
/** As a reader gets it. */
const sent = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

test('some days of somebody, with an entry of every kind, are FHIR to all three layers: to keep, to send, with a name or without', () => {
  const records = livedRecords();
  for (const over of [{}, { texts: false, subject: { kind: 'existing', reference: 'Patient/123' } }] as const) {
    const { prepared } = preparedOf(records, over);
    expect(faultsOf(sent(collectionBundle(prepared, counting(), at)))).toEqual([]);
    expect(faultsOf(sent(transactionBundle(prepared, counting())))).toEqual([]);
  }
  expect(new Set(preparedOf(records).prepared.map(({ resource }) => resource.resourceType))).toEqual(
    new Set(['Patient', 'Device', 'CarePlan', 'ServiceRequest', 'Observation', 'QuestionnaireResponse', 'DocumentReference']),
  );
});

test('any records at all are FHIR to all three layers', () => {
  fc.assert(
    fc.property(anyRecords, (records) => {
      expect(faultsOf(sent(collectionBundle(preparedOf(records).prepared, counting(), at)))).toEqual([]);
    }),
    { numRuns: 60 },
  );
});

test('code systems and questionnaires are FHIR to all three layers', () => {
  expect(faultsOf(sent(definitionsBundle(DEFAULT_NAMING)))).toEqual([]);
});
