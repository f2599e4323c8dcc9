import type {
  CarePlan,
  Narrative,
  Observation,
  ObservationComponent,
  QuestionnaireResponse,
  QuestionnaireResponseItem,
  QuestionnaireResponseItemAnswer,
  Resource,
  ServiceRequest,
} from '@medplum/fhirtypes';
import type { Prepared } from './prepared.ts';
import { codingText, conceptText, conceptTexts, momentText, periodText, quantityText, timingText } from './said-in-text.ts';
import type { Term } from './terms.ts';
import { narrative, type TextLine } from './xhtml.ts';

const said = (name: string, text: string | undefined): readonly TextLine[] => (text ? [[name, text]] : []);

/** The one of many components that is not told: each repetition stands beside the text, and there may be a hundred. */
const LEFT_OUT: Term<'measure'> = 'repetition-range';

const saidValue = (of: Observation | ObservationComponent): string =>
  quantityText(of.valueQuantity) ||
  conceptText(of.valueCodeableConcept) ||
  (of.valueString ?? '') ||
  conceptText(of.dataAbsentReason).toLowerCase();

function componentLines(component: ObservationComponent): readonly TextLine[] {
  if (component.code.coding?.some(({ code }) => code === LEFT_OUT)) return [];
  const more = conceptTexts(component.interpretation);
  return said(conceptText(component.code), `${saidValue(component)}${more ? ` (${more})` : ''}`);
}

function observationText(of: Observation): Narrative {
  return narrative(conceptText(of.code), [
    ...said('Where', conceptText(of.bodySite)),
    ...said('When', momentText(of.effectiveDateTime) || periodText(of.effectivePeriod)),
    ...said('Value', saidValue(of)),
    ...said('How', conceptText(of.method)),
    ...(of.component ?? []).flatMap(componentLines),
    ...(of.note ?? []).flatMap(({ text }) => said('Note', text)),
    ...(of.status === 'amended' ? ([[null, 'Changed by hand after it was measured']] as const) : []),
  ]);
}

function carePlanText(of: CarePlan): Narrative {
  const lines = (of.activity ?? []).filter(({ reference }) => reference).length;
  return narrative(of.title ?? 'Plan', [
    ...said('Status', of.status),
    ...said('From', momentText(of.period?.start)),
    ...said('By', of.author?.display),
    [null, lines === 1 ? 'One exercise, in a request of its own' : `${lines} exercises, each in a request of its own`],
    ...(of.activity ?? []).flatMap(({ detail }) => said(conceptText(detail?.code), detail?.description)),
  ]);
}

function requestText(of: ServiceRequest): Narrative {
  return narrative(conceptText(of.code), [
    ...said('Status', of.status),
    ...said('Where', conceptTexts(of.bodySite)),
    ...said('What', of.patientInstruction),
    ...said('How often', timingText(of.occurrenceTiming)),
    ...said('Asked for by', of.requester?.display),
    ...(of.orderDetail ?? []).map((detail): TextLine => [null, conceptText(detail)]),
    ...said('Why', conceptTexts(of.reasonCode)),
  ]);
}

function answerText(of: QuestionnaireResponseItemAnswer): string {
  if (of.valueBoolean !== undefined) return of.valueBoolean ? 'yes' : 'no';
  if (of.valueInteger !== undefined) return `${of.valueInteger}`;
  return codingText(of.valueCoding) || quantityText(of.valueQuantity) || (of.valueString ?? of.valueDate ?? '');
}

const itemLines = ({ text, linkId, answer = [], item = [] }: QuestionnaireResponseItem, before = ''): readonly TextLine[] => {
  const name = `${before}${text ?? linkId}`;
  if (item.length > 0) return item.flatMap((each) => itemLines(each, `${name}, `));
  return [[name, answer.map(answerText).join('; ') || 'not answered']];
};

function responseText(of: QuestionnaireResponse): Narrative {
  return narrative('Questions and answers', [
    ...said('When', momentText(of.authored)),
    ...(of.item ?? []).flatMap((item) => itemLines(item)),
  ]);
}

function textOf(resource: Resource): Narrative | null {
  switch (resource.resourceType) {
    case 'Observation':
      return observationText(resource);
    case 'CarePlan':
      return carePlanText(resource);
    case 'ServiceRequest':
      return requestText(resource);
    case 'QuestionnaireResponse':
      return responseText(resource);
    default:
      return null;
  }
}

/** The same with a text for people, where a clinician may see it in another viewer. It says no more than the resource itself: what was left out stays out. */
export function withText(prepared: Prepared): Prepared {
  const text = textOf(prepared.resource);
  return text === null ? prepared : { ...prepared, resource: { ...prepared.resource, text } as Resource };
}
