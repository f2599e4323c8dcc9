import type { Bundle, CodeableConcept, Observation, ObservationComponent, Quantity, Resource } from '@medplum/fhirtypes';
import { expect, test } from 'vitest';
import { collectionBundle, transactionBundle } from '../../src/fhir/bundles.ts';
import { DEFAULT_NAMING } from '../../src/fhir/naming.ts';
import { recordsOfPeriod } from '../../src/fhir/period.ts';
import { recordsOf } from '../../src/fhir/records-of.ts';
import { editedCount, editedReps } from '../../src/record/rep-edit.ts';
import type { StoredSet } from '../../src/record/stored-set.ts';
import { median } from '../../src/signal/median.ts';
import { dayOf } from '../symptoms/told.ts';
import { contextOf, counting, preparedOf } from './context.ts';
import { livedRecords } from './lived-records.ts';
import { otherSets } from './other-sets.ts';
import { faultsOf } from './validate/all-layers.ts';

const [lived, others] = [livedRecords(), otherSets()];
const all = { sets: [...lived.sets, ...others.sets], diary: [...lived.diary, ...others.diary] };
const days = { from: dayOf(1), to: dayOf(28) };
const period = recordsOfPeriod(all.sets, all.diary, days, 'UTC');
const sent = <T>(value: T): T => JSON.parse(JSON.stringify(value)) as T;
const { prepared } = preparedOf({ sets: period.sets, diary: period.entries }, contextOf(all.diary));
const bundle: Bundle = sent(collectionBundle(prepared, counting(), '2026-05-29T10:00:00.000Z'));
const resources = (bundle.entry ?? []).map(({ resource }) => resource as Resource);
const ofType = <T extends Resource>(type: T['resourceType']): readonly T[] =>
  resources.filter((each): each is T => each.resourceType === type);

const codeOf = (concept: CodeableConcept | undefined): string => concept?.coding?.[0]?.code ?? '';
const shownSet = ({ id }: StoredSet): Observation => {
  const found = ofType<Observation>('Observation').find(({ identifier }) => identifier?.[0]?.value === id);
  if (!found) throw new Error(`shownSet requires an observation of the set ${id}, got none`);
  return found;
};
const componentsOf = (of: Observation, code: string): readonly ObservationComponent[] =>
  (of.component ?? []).filter((each) => codeOf(each.code) === code);
const UCUM = 'http://unitsofmeasure.org';
const degrees = (value: number) => ({ value: Math.round(value * 100) / 100, unit: '°', system: UCUM, code: 'deg' });
const quantitiesIn = (of: Observation): readonly Quantity[] =>
  [of.valueQuantity, ...(of.component ?? []).map(({ valueQuantity }) => valueQuantity)].flatMap((each) => (each ? [each] : []));

test('the bundle of a period is FHIR to all three layers, to keep and to send, and holds each kind of resource', () => {
  expect(faultsOf(bundle)).toEqual([]);
  expect(faultsOf(sent(transactionBundle(prepared, counting())))).toEqual([]);
  const counts = (['Patient', 'CarePlan', 'ServiceRequest', 'Observation', 'QuestionnaireResponse', 'Device'] as const).map(
    (type) => [type, ofType(type).length > 0] as const,
  );
  expect(counts.filter(([, isThere]) => !isThere)).toEqual([]);
  const questionnaires = new Set(
    resources.flatMap((each) => (each.resourceType === 'QuestionnaireResponse' ? [each.questionnaire?.split('/').at(-1)] : [])),
  );
  expect(questionnaires.size).toBe(5);
});

test('big toe lifts by stickers, glides, stands, an own exercise, free sets and one cut off are all among the sets', () => {
  expect(period.sets).toHaveLength(all.sets.length);
  expect(new Set(period.sets.map(({ exercise }) => exercise))).toEqual(
    new Set(['foot-tap', 'leg-raise', 'knee-straighten', 'toe-lift', 'nerve-glide', 'heel-stand', 'own']),
  );
  expect(period.sets.filter(({ model }) => model === 'stickers')).toHaveLength(2);
  const isFree = (set: StoredSet) => shownSet(set).basedOn === undefined;
  expect(period.sets.some(isFree) && period.sets.some((set) => !isFree(set))).toBe(true);
});

test.each(period.sets.map((set) => [`${set.exercise}, ${set.side}, ${set.model}, ${set.state}`, set] as const))(
  'a set is an observation with count, summary, leg, method, device, error in words and each repetition: %s',
  (_, set) => {
    const shown = shownSet(set);
    expect(shown.valueQuantity).toMatchObject({ value: editedCount(set), system: UCUM, code: '{repetition}' });
    expect(codeOf(shown.code)).toBe(`${set.exercise}-set`);
    // R4 has no element for the side of a body site: it is part of the code.
    expect(codeOf(shown.bodySite)).toMatch(new RegExp(`-${set.side}$`));
    expect(codeOf(shown.method)).toBe('camera-2d');
    expect(shown.method?.text).toContain(set.model === 'stickers' ? 'three stickers' : 'pose model');
    expect(shown.device?.reference).toBe(
      (bundle.entry ?? []).find(({ resource }) => resource?.resourceType === 'Device')?.fullUrl,
    );
    expect(shown.subject?.reference).toBe(
      (bundle.entry ?? []).find(({ resource }) => resource?.resourceType === 'Patient')?.fullUrl,
    );
    for (const { system, code } of quantitiesIn(shown)) {
      expect(system).toBe(UCUM);
      expect(['deg', 'ms', '{repetition}', '{cycle}']).toContain(code);
    }
    const reps = editedReps(set);
    const counted = reps.flatMap((each) => (each.kind === 'measured' && !each.struck && each.rep.complete ? [each.rep] : []));
    const summary = [
      ['median-range', median(counted.map(({ rangeDeg }) => rangeDeg))],
      ['range-error', median(counted.map(({ uncertaintyDeg }) => uncertaintyDeg))],
      ['median-peak', median(counted.map(({ peakDeg }) => peakDeg))],
    ] as const;
    for (const [code, value] of summary) {
      const [component] = componentsOf(shown, code);
      expect(component?.valueQuantity).toEqual(value === null ? undefined : degrees(value));
      expect(component?.dataAbsentReason === undefined).toBe(value !== null);
    }
    const error = summary[1][1];
    const note = shown.note?.map(({ text }) => text).join('\n') ?? '';
    if (error === null) expect(note).not.toContain('Error');
    else expect(note).toContain(`± ${degrees(error).value} degrees`);
    const shownReps = componentsOf(shown, 'repetition-range');
    expect(shownReps.map(({ valueQuantity }) => valueQuantity?.value)).toEqual(
      reps.map((each) => (each.kind === 'measured' ? degrees(each.rep.rangeDeg).value : undefined)),
    );
    const isCounted = ({ interpretation }: ObservationComponent) => interpretation?.some((each) => codeOf(each) === 'complete');
    expect(shownReps.filter(isCounted).length).toBe(reps.filter((each) => each.kind === 'measured' && each.rep.complete).length);
  },
);

test('a set of glides says how foot and head moved together, in every cycle that slid, and how high the leg was held', () => {
  const glides = period.sets.filter(({ exercise }) => exercise === 'nerve-glide');
  expect(glides.map((set) => codeOf(componentsOf(shownSet(set), 'glide-pattern')[0]?.valueCodeableConcept))).toEqual([
    'slide',
    'tension',
  ]);
  for (const set of glides) {
    const { cycles = [], footRangeDeg = null } = set.result?.glide ?? {};
    const value = (code: string) => componentsOf(shownSet(set), code)[0]?.valueQuantity;
    expect(value('glide-cycles')).toMatchObject({ value: cycles.length, code: '{cycle}' });
    expect(value('glide-cycles-sliding')?.value).toBe(cycles.filter(({ pattern }) => pattern === 'slide').length);
    expect(footRangeDeg).not.toBeNull();
    expect(value('foot-range')).toEqual(degrees(footRangeDeg ?? 0));
  }
});

test('the angle at onset is an observation of its own, from the set, with what is known of its error in words', () => {
  const onsets = ofType<Observation>('Observation').filter(({ code }) => codeOf(code) === 'angle-at-symptom-onset');
  const ofSets = onsets.filter(({ derivedFrom }) => derivedFrom);
  const marked = onsets.filter(({ derivedFrom }) => !derivedFrom);
  expect(ofSets).toHaveLength(period.sets.filter(({ result }) => result?.onset).length);
  expect(ofSets[0]?.valueQuantity).toEqual(degrees(41.2));
  expect(ofSets[0]?.note?.[0]?.text).toContain('not known');
  expect(marked.length).toBeGreaterThan(0);
  for (const { note, valueQuantity, bodySite } of marked) {
    expect(note?.[0]?.text).toMatch(/± [\d.]+ degrees/);
    expect(valueQuantity?.code).toBe('deg');
    expect(codeOf(bodySite)).toMatch(/-(left|right)$/);
  }
});

test('what was taken back is shown as entered in error, without a value, where it is known what it was', () => {
  const withdrawn = ofType<Observation>('Observation').filter(({ status }) => status === 'entered-in-error');
  expect(withdrawn.map(({ code }) => codeOf(code)).toSorted()).toEqual(['heel-stand-set', 'own-set', 'toe-lift-set']);
  for (const each of withdrawn) {
    expect(quantitiesIn(each)).toEqual([]);
    expect(each.component).toBeUndefined();
  }
});

test('all of it comes back as it went out', () => {
  const found = recordsOf(bundle, DEFAULT_NAMING);
  const byId = (a: { readonly id: string }, b: { readonly id: string }) => (a.id < b.id ? -1 : 1);
  expect(found.refused).toEqual([]);
  expect(found.sets.toSorted(byId)).toEqual(all.sets.toSorted(byId));
  expect(found.diary.toSorted(byId)).toEqual(all.diary.toSorted(byId));
});
