import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { collectionBundle, definitionsBundle, transactionBundle } from '../../src/fhir/bundles.ts';
import { DEFAULT_NAMING } from '../../src/fhir/naming.ts';
import { anyRecords } from './any-records.ts';
import { counting, preparedOf } from './context.ts';
import { livedRecords } from './lived-records.ts';
import { SEEDED_FAULTS, type SeededFault } from './seeded-faults.ts';
import { faultsOf } from './validate/all-layers.ts';
import { resolvedReferences } from './validate/resolved-references.ts';

const at = '2026-05-09T10:00:00.000Z';
/** As a reader gets it. */
const sent = (value: unknown): unknown => JSON.parse(JSON.stringify(value));
const lived = livedRecords();

test('some days of somebody, with an entry of every kind, are FHIR to all three layers: to keep, to send, with a name or without', () => {
  const { prepared } = preparedOf(lived);
  expect(faultsOf(sent(collectionBundle(prepared, counting(), at)))).toEqual([]);
  const unnamed = preparedOf(lived, { texts: false, subject: { kind: 'existing', reference: 'Patient/123' } });
  expect(faultsOf(sent(transactionBundle(unnamed.prepared, counting())))).toEqual([]);
  expect(new Set(prepared.map(({ resource }) => resource.resourceType))).toEqual(
    new Set(['Patient', 'Device', 'CarePlan', 'ServiceRequest', 'Observation', 'QuestionnaireResponse', 'DocumentReference']),
  );
});

test('any records at all are FHIR to all three layers', () => {
  fc.assert(
    fc.property(anyRecords, (records) => {
      expect(faultsOf(sent(collectionBundle(preparedOf(records).prepared, counting(), at)))).toEqual([]);
    }),
    { numRuns: 50 },
  );
});

test('code systems and questionnaires are FHIR to all three layers', () => {
  expect(faultsOf(sent(definitionsBundle(DEFAULT_NAMING)))).toEqual([]);
});

describe('the three layers together find', () => {
  const bundle = collectionBundle(preparedOf(lived).prepared, counting(), at);
  const { entry } = resolvedReferences(sent(bundle)).resolved as typeof bundle;
  const sound = (type: SeededFault['into']): Record<string, unknown> => ({
    ...entry?.find(({ resource }) => resource?.resourceType === type)?.resource,
  });
  const alone: Readonly<Record<SeededFault['into'], Record<string, unknown>>> = {
    Observation: sound('Observation'),
    QuestionnaireResponse: sound('QuestionnaireResponse'),
    CarePlan: sound('CarePlan'),
    ServiceRequest: sound('ServiceRequest'),
    DocumentReference: sound('DocumentReference'),
    Patient: sound('Patient'),
    Device: sound('Device'),
  };
  test.each(Object.entries(alone))('nothing in what is put to the test: %s', (_, resource) => {
    expect(faultsOf(sent(resource))).toEqual([]);
  });

  test.each(SEEDED_FAULTS.map((fault) => [fault.name, fault] as const))('%s', (_, { into, change }) => {
    expect(faultsOf(sent(change(alone[into]))).length).toBeGreaterThan(0);
  });

  test('a reference that leads nowhere', () => {
    const [, ...others] = bundle.entry ?? [];
    expect(faultsOf(sent({ ...bundle, entry: others })).filter(({ layer }) => layer === 'bundle').length).toBeGreaterThan(0);
  });
});
