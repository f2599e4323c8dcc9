import type { CodeSystem, Questionnaire, QuestionnaireItem } from '@medplum/fhirtypes';
import { BODY_SITES } from './body-site.ts';
import { coding } from './concept.ts';
import { codeSystemUrl, type Naming, questionnaireUrl, TERMS_VERSION } from './naming.ts';
import { QUESTIONNAIRES, type Question, type QuestionnaireName } from './questionnaires.ts';
import { TERMS } from './terms.ts';

/** A name as FHIR wants one for machines: `Evenside` and the words of the short name. */
const machineName = (name: string): string =>
  `Evenside${name
    .split('-')
    .map((word) => word.slice(0, 1).toUpperCase() + word.slice(1))
    .join('')}`;

const codeSystem = (naming: Naming, name: string, terms: readonly (readonly [code: string, display: string])[]): CodeSystem => ({
  resourceType: 'CodeSystem',
  url: codeSystemUrl(naming, name),
  version: TERMS_VERSION,
  name: machineName(name),
  title: `Evenside: ${name}`,
  status: 'active',
  experimental: false,
  caseSensitive: true,
  content: 'complete',
  count: terms.length,
  concept: terms.map(([code, display]) => ({ code, display })),
});

/** Our own code systems. No terminology of others has the joint angles of these exercises in a version we could check. */
export const codeSystems = (naming: Naming): readonly CodeSystem[] => [
  ...Object.entries(TERMS).map(([name, terms]) => codeSystem(naming, name, Object.entries(terms))),
  codeSystem(naming, 'body-site', BODY_SITES),
];

function itemOf(naming: Naming, { linkId, text, type, repeats, options, items }: Question): QuestionnaireItem {
  const codings =
    options === 'body-site'
      ? [
          coding(naming, 'answer', 'nowhere'),
          ...BODY_SITES.map(([code, display]) => ({ system: codeSystemUrl(naming, 'body-site'), code, display })),
        ]
      : (options ?? []).map((code) => coding(naming, 'answer', code));
  return {
    linkId,
    text,
    type,
    ...(repeats ? { repeats } : {}),
    ...(codings.length > 0 ? { answerOption: codings.map((valueCoding) => ({ valueCoding })) } : {}),
    ...(items ? { item: items.map((each) => itemOf(naming, each)) } : {}),
  };
}

/** What is asked, as the answers of a bundle name it. No question need be answered. */
export const questionnaires = (naming: Naming): readonly Questionnaire[] =>
  (Object.keys(QUESTIONNAIRES) as QuestionnaireName[]).map((name) => ({
    resourceType: 'Questionnaire',
    url: questionnaireUrl(naming, name),
    version: TERMS_VERSION,
    name: machineName(name),
    title: QUESTIONNAIRES[name].title,
    status: 'active',
    experimental: false,
    subjectType: ['Patient'],
    item: (QUESTIONNAIRES[name].items as readonly Question[]).map((question) => itemOf(naming, question)),
  }));
