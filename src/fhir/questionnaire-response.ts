import type {
  Observation,
  QuestionnaireResponse,
  QuestionnaireResponseItem,
  QuestionnaireResponseItemAnswer,
  Reference,
  ServiceRequest,
} from '@medplum/fhirtypes';
import type { Entry } from '../symptoms/entry.ts';
import { questionnaireUrl, TERMS_VERSION } from './naming.ts';
import { originTag } from './origin-tag.ts';
import { fhirMoment } from './plain-text.ts';
import type { Context, Prepared } from './prepared.ts';
import { QUESTIONNAIRES, type Question, type QuestionnaireName } from './questionnaires.ts';
import { recordId } from './record-id.ts';
import { subjectRef } from './subject.ts';

/** Answers by `linkId`; a question that is not in it was not answered. */
export type Answers = Readonly<Record<string, readonly QuestionnaireResponseItemAnswer[]>>;

function itemOf({ linkId, text, items }: Question, answers: Answers): QuestionnaireResponseItem {
  const answer = answers[linkId] ?? [];
  if (items) return { linkId, text, item: items.map((each) => itemOf(each, answers)) };
  return { linkId, text, ...(answer.length > 0 ? { answer: [...answer] } : {}) };
}

/** What somebody answered, question by question in the questionnaire's order; one that was left open stands there without an answer. */
export function responseOf(
  context: Context,
  entry: Entry,
  name: QuestionnaireName,
  answers: Answers,
  about: { readonly basedOn?: readonly Reference<ServiceRequest>[]; readonly partOf?: readonly Reference<Observation>[] } = {},
): Prepared {
  const id = recordId(context.naming, entry.id);
  const authored = fhirMoment(entry.at);
  const { basedOn = [], partOf = [] } = about;
  const resource: QuestionnaireResponse = {
    resourceType: 'QuestionnaireResponse',
    ...originTag(context.naming, entry.origin),
    identifier: id,
    ...(basedOn.length > 0 ? { basedOn: [...basedOn] } : {}),
    ...(partOf.length > 0 ? { partOf: [...partOf] } : {}),
    questionnaire: `${questionnaireUrl(context.naming, name)}|${TERMS_VERSION}`,
    status: 'completed',
    subject: subjectRef(context),
    ...(authored ? { authored } : {}),
    source: subjectRef(context),
    item: (QUESTIONNAIRES[name].items as readonly Question[]).map((question) => itemOf(question, answers)),
  };
  return { resource, identifier: id, changed: false };
}
