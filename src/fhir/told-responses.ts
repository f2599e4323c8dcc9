import type { QuestionnaireResponseItemAnswer } from '@medplum/fhirtypes';
import type { CheckIn } from '../symptoms/check-in.ts';
import type { Clearance } from '../symptoms/clearance.ts';
import type { NotAnswered } from '../symptoms/entry.ts';
import type { Felt } from '../symptoms/felt.ts';
import type { RedFlagAnswers } from '../symptoms/red-flags.ts';
import type { SelfCheck } from '../symptoms/self-check.ts';
import type { SymptomReport } from '../symptoms/symptom-report.ts';
import { coding, siteCoding } from './concept.ts';
import type { Naming } from './naming.ts';
import { plainText } from './plain-text.ts';
import type { Context, Prepared } from './prepared.ts';
import { quantity } from './quantity.ts';
import { type Answers, responseOf } from './questionnaire-response.ts';
import { lineHeldAt, setRef } from './record-id.ts';
import type { Term } from './terms.ts';

type Answer = QuestionnaireResponseItemAnswer;

const answered = <T>(value: T | NotAnswered, of: (value: T) => readonly Answer[]): readonly Answer[] =>
  value === 'not-answered' ? [] : of(value as T);
const whole = (value: number | NotAnswered) => answered<number>(value, (valueInteger) => [{ valueInteger }]);
const yesNo = (value: 'yes' | 'no' | NotAnswered) => answered<'yes' | 'no'>(value, (each) => [{ valueBoolean: each === 'yes' }]);
const chosen = (naming: Naming, value: Term<'answer'> | NotAnswered) =>
  answered<Term<'answer'>>(value, (code) => [{ valueCoding: coding(naming, 'answer', code) }]);

/** What is felt now. An empty list is an answer, too: none of them, nowhere. */
const feltAnswers = (naming: Naming, { intensity, kinds, places }: Felt): Answers => ({
  intensity: whole(intensity),
  kinds: answered<Exclude<Felt['kinds'], NotAnswered>>(kinds, (all) =>
    (all.length > 0 ? all : (['none'] as const)).flatMap((kind) => chosen(naming, kind)),
  ),
  places: answered<Exclude<Felt['places'], NotAnswered>>(places, (all) =>
    all.length > 0
      ? all.map(({ region, side }) => ({ valueCoding: siteCoding(naming, region, side) }))
      : chosen(naming, 'nowhere'),
  ),
});

export const symptomResponse = (context: Context, entry: SymptomReport): Prepared =>
  responseOf(
    context,
    entry,
    'symptoms',
    { moment: chosen(context.naming, entry.moment), ...feltAnswers(context.naming, entry) },
    {
      basedOn: lineHeldAt(context, entry.itemId, entry.at),
      partOf: entry.setId === null ? [] : [setRef(context, entry.setId)],
    },
  );

export const checkInResponse = (context: Context, entry: CheckIn): Prepared =>
  responseOf(context, entry, 'check-in', {
    'about-day': [{ valueDate: entry.aboutDay }],
    worst: whole(entry.worst),
    afterwards: chosen(context.naming, entry.afterwards),
    weakness: chosen(context.naming, entry.weakness),
    ...feltAnswers(context.naming, entry),
  });

export const redFlagsResponse = (context: Context, entry: RedFlagAnswers): Prepared =>
  responseOf(
    context,
    entry,
    'red-flags',
    Object.fromEntries(Object.entries(entry.answers).map(([id, answer]) => [id, yesNo(answer)])),
  );

export function clearanceResponse(context: Context, entry: Clearance): Prepared {
  const note = context.texts ? plainText(entry.note) : undefined;
  return responseOf(context, entry, 'clearance', {
    seen: [{ valueBoolean: true }],
    note: note ? [{ valueString: note }] : [],
  });
}

export function selfCheckResponse(context: Context, entry: SelfCheck): Prepared {
  const { naming } = context;
  const answers: Record<string, readonly Answer[]> = {};
  for (const finding of entry.findings) {
    const linkId = `${finding.side}.${finding.check}`;
    answers[linkId] = [...(answers[linkId] ?? []), ...foundOf(naming, finding)];
  }
  return responseOf(context, entry, 'self-check', answers);
}

function foundOf(naming: Naming, finding: SelfCheck['findings'][number]): readonly Answer[] {
  switch (finding.check) {
    case 'big-toe':
      return chosen(naming, finding.found);
    case 'heel-walk':
      return whole(finding.found);
    case 'heel-stand':
      return answered<number>(finding.found, (seconds) => [{ valueQuantity: quantity(seconds, 's') }]);
    case 'foot-slap':
    case 'forefoot-sinks':
      return yesNo(finding.found);
    default:
      return finding satisfies never;
  }
}
