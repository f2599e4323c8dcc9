import type { CarePlan, CarePlanActivity } from '@medplum/fhirtypes';
import type { Prescription } from '../dose/prescription.ts';
import { originTag } from './origin-tag.ts';
import { fhirMoment } from './plain-text.ts';
import { type Context, type Prepared, refTo } from './prepared.ts';
import { SELF_CHECK_QUESTIONS } from './questionnaires.ts';
import { lineRef, recordId } from './record-id.ts';
import { deciderRef, isReplaced, lineRequests } from './service-requests.ts';
import { subjectRef } from './subject.ts';

/** The checks of strength that the person repeats alone. */
function checksOf({ selfChecks }: Prescription): readonly CarePlanActivity[] {
  const { checks, sides, everyDays } = selfChecks;
  if (checks.length === 0) return [];
  const legs = sides.length > 0 ? ` (${sides.join(' and ')})` : '';
  const description = `${checks.map((check) => SELF_CHECK_QUESTIONS[check]).join('; ')}${legs}`;
  return [
    {
      detail: {
        code: { text: 'Checks of strength, done alone' },
        status: 'in-progress',
        scheduledTiming: { repeat: { frequency: 1, period: everyDays, periodUnit: 'd' } },
        description,
      },
    },
  ];
}

/** A prescription: the plan, and a request for each of its lines. */
export function carePlanOf(context: Context, prescription: Prescription): readonly Prepared[] {
  const { naming } = context;
  const id = recordId(naming, prescription.id);
  const written = fhirMoment(prescription.writtenAt ?? prescription.at);
  const since = fhirMoment(prescription.at);
  const replaced = isReplaced(context, prescription);
  const activity = [
    ...prescription.items.map((line) => ({ reference: lineRef(context, prescription.id, line.id) })),
    ...checksOf(prescription),
  ];
  const resource: CarePlan = {
    resourceType: 'CarePlan',
    ...originTag(naming, prescription.origin),
    identifier: [id],
    ...(prescription.revises ? { replaces: [refTo<CarePlan>('CarePlan', recordId(naming, prescription.revises))] } : {}),
    status: replaced ? 'revoked' : 'active',
    intent: prescription.by.role === 'therapist' ? 'order' : 'plan',
    title: 'Exercises to do at home',
    subject: subjectRef(context),
    ...(since ? { period: { start: since } } : {}),
    ...(written ? { created: written } : {}),
    author: deciderRef(context, prescription.by),
    ...(activity.length > 0 ? { activity } : {}),
  };
  return [{ resource, identifier: id, changed: replaced }, ...lineRequests(context, prescription)];
}
