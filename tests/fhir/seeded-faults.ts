type Json = { [key: string]: unknown };

export interface SeededFault {
  readonly name: string;
  readonly into:
    | 'Observation'
    | 'QuestionnaireResponse'
    | 'CarePlan'
    | 'ServiceRequest'
    | 'DocumentReference'
    | 'Patient'
    | 'Device';
  readonly change: (resource: Json) => Json;
}

const without =
  (key: string) =>
  (resource: Json): Json => {
    const { [key]: _, ...rest } = resource;
    return rest;
  };
const withOther =
  (over: Json) =>
  (resource: Json): Json => ({ ...resource, ...over });
const inQuantity =
  (over: Json) =>
  (resource: Json): Json => ({
    ...resource,
    valueQuantity: { ...(resource.valueQuantity as Json), ...over },
  });
/** The first component, changed. */
const inComponent =
  (change: (component: Json) => Json) =>
  (resource: Json): Json => {
    const [first = {}, ...others] = resource.component as readonly Json[];
    return { ...resource, component: [change(first), ...others] };
  };
const fault = (name: string, into: SeededFault['into'], change: SeededFault['change']): SeededFault => ({ name, into, change });

/** Faults of every kind that writers of FHIR make, each to be put into a resource that has none. */
export const SEEDED_FAULTS: readonly SeededFault[] = [
  fault('an element that must be there is missing', 'Observation', without('status')),
  fault('the code is missing', 'Observation', without('code')),
  fault('a code that is not in its required value set', 'Observation', withOther({ status: 'done' })),
  fault('a property that there is none of', 'Observation', withOther({ result: 12 })),
  fault('a number as a text', 'Observation', inQuantity({ value: '12' })),
  fault('a unit code without its system (qty-3)', 'Observation', inQuantity({ system: undefined })),
  fault('two kinds of value at once', 'Observation', withOther({ valueString: 'twelve' })),
  fault('a value, and a reason for its absence (obs-6)', 'Observation', withOther({ dataAbsentReason: { text: 'not done' } })),
  fault('a component with the code and the value of the whole (obs-7)', 'Observation', (resource) => ({
    ...resource,
    component: [{ code: resource.code, valueQuantity: resource.valueQuantity }],
  })),
  fault('a day that no calendar has', 'Observation', withOther({ effectivePeriod: { start: '2026-13-45' } })),
  fault('a moment without a time zone', 'Observation', withOther({ effectivePeriod: { start: '2026-05-03T09:00:00' } })),
  fault(
    'an end before its start (per-1)',
    'Observation',
    withOther({ effectivePeriod: { start: '2026-05-03', end: '2026-05-02' } }),
  ),
  fault('an id with a character that ids have not', 'Observation', withOther({ id: 'a_b' })),
  fault('an empty text', 'Observation', withOther({ method: { text: '' } })),
  fault('an empty list', 'Observation', withOther({ note: [] })),
  fault('one where there must be a list', 'Observation', (resource) => ({
    ...resource,
    category: (resource.category as unknown[])[0],
  })),
  fault('a list where there must be one', 'Observation', (resource) => ({ ...resource, subject: [resource.subject] })),
  fault('a reference to a resource of another type', 'Observation', withOther({ subject: { reference: 'Organization/1' } })),
  fault('an object with nothing in it', 'Observation', withOther({ bodySite: {} })),
  fault('null for a value', 'Observation', withOther({ method: null })),
  fault('a component that does not say what it is', 'Observation', inComponent(without('code'))),
  fault('a component with two kinds of value', 'Observation', inComponent(withOther({ valueString: 'twelve' }))),
  fault('a component whose number is a text', 'Observation', inComponent(withOther({ valueQuantity: { value: '12.5' } }))),
  fault(
    'a component whose unit has a code without a system (qty-3)',
    'Observation',
    inComponent(withOther({ valueQuantity: { value: 12.5, unit: '°', code: 'deg' } })),
  ),
  fault('a note without its text', 'Observation', withOther({ note: [{ time: '2026-05-03' }] })),
  fault('a side as an element of its own, which R4 has not', 'Observation', withOther({ bodySite: { laterality: 'left' } })),
  fault('a device that is a reference to a person', 'Observation', withOther({ device: { reference: 'Patient/1' } })),
  fault('a name of a device without its type', 'Device', withOther({ deviceName: [{ name: 'Evenside' }] })),
  fault('a version of a device without its value', 'Device', withOther({ version: [{}] })),
  fault('a status that devices have not', 'Device', withOther({ status: 'on' })),
  fault('a questionnaire response without its status', 'QuestionnaireResponse', without('status')),
  fault(
    'an answer of yes as a text',
    'QuestionnaireResponse',
    withOther({ item: [{ linkId: 'a', answer: [{ valueBoolean: 'yes' }] }] }),
  ),
  fault('a plan without its intent', 'CarePlan', without('intent')),
  fault('a plan of nobody', 'CarePlan', without('subject')),
  fault('a request whose status is none', 'ServiceRequest', withOther({ status: 'running' })),
  fault('a request for two quantities at once', 'ServiceRequest', withOther({ quantityRange: { low: { value: 1 } } })),
  fault('a document whose size is below nothing', 'DocumentReference', withOther({ content: [{ attachment: { size: -1 } }] })),
  fault('a code with a blank before it', 'Patient', withOther({ gender: ' female' })),
  fault(
    'an answer under two kinds',
    'QuestionnaireResponse',
    withOther({
      item: [{ linkId: 'intensity', answer: [{ valueInteger: 3, valueString: '3' }] }],
    }),
  ),
  fault(
    'an answer that is no whole number',
    'QuestionnaireResponse',
    withOther({
      item: [{ linkId: 'intensity', answer: [{ valueInteger: 3.5 }] }],
    }),
  ),
  fault(
    'items beside answers and in a group at once (qrs-1)',
    'QuestionnaireResponse',
    withOther({
      item: [{ linkId: 'a', answer: [{ valueInteger: 3 }], item: [{ linkId: 'b' }] }],
    }),
  ),
  fault(
    'an activity as reference and in detail (cpl-3)',
    'CarePlan',
    withOther({
      activity: [{ reference: { reference: 'ServiceRequest/1' }, detail: { status: 'in-progress' } }],
    }),
  ),
  fault('details of an order for nothing (prr-1)', 'ServiceRequest', without('code')),
  fault(
    'a period that is not above 0 (tim-4)',
    'ServiceRequest',
    withOther({
      occurrenceTiming: { repeat: { frequency: 1, period: -1, periodUnit: 'd' } },
    }),
  ),
  fault('a document without content', 'DocumentReference', without('content')),
  fault('data without their kind (att-1)', 'DocumentReference', withOther({ content: [{ attachment: { data: 'e30=' } }] })),
];
