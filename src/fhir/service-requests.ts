import type { Patient, Practitioner, Reference, ServiceRequest, Timing } from '@medplum/fhirtypes';
import type { Dose } from '../dose/dose.ts';
import type { DoseStep } from '../dose/dose-step.ts';
import type { PrescribedExercise } from '../dose/prescribed-exercise.ts';
import type { Prescription } from '../dose/prescription.ts';
import { byMoment } from '../symptoms/entry.ts';
import { siteOfExercise } from './body-site.ts';
import { concept, site } from './concept.ts';
import { doseText, orderDetails } from './order-details.ts';
import { originTag } from './origin-tag.ts';
import { fhirMoment, plainText } from './plain-text.ts';
import type { Context, Prepared } from './prepared.ts';
import { quantity } from './quantity.ts';
import { lineId, lineRef, recordId } from './record-id.ts';
import { subjectRef } from './subject.ts';

/** How often: sets of each leg, over a day, or over a week where not every day is one. */
const timing = ({ setsADay }: Dose, daysAWeek: number): Timing => ({
  repeat:
    daysAWeek === 7
      ? { frequency: setsADay, period: 1, periodUnit: 'd' }
      : { frequency: setsADay * daysAWeek, period: 1, periodUnit: 'wk' },
});

/** Who decided: the person, or a therapist of whom at most the name is known. */
export function deciderRef(context: Context, by: Prescription['by']): Reference<Patient | Practitioner> {
  if (by.role === 'patient') return subjectRef(context);
  return { type: 'Practitioner', display: (context.texts ? plainText(by.name) : undefined) ?? 'A therapist' };
}

/** Whether another prescription has taken this one's place. */
export const isReplaced = ({ diary }: Context, prescription: Prescription): boolean =>
  diary.some((entry) => entry.kind === 'prescription' && byMoment(entry, prescription) > 0);

/** One line of a prescription, as it was written. The doses agreed to later are requests of their own. */
function lineRequest(context: Context, prescription: Prescription, line: PrescribedExercise): Prepared {
  const { naming } = context;
  const id = lineId(naming, prescription.id, line.id);
  const written = fhirMoment(prescription.writtenAt ?? prescription.at);
  const replaced = isReplaced(context, prescription);
  const resource: ServiceRequest = {
    resourceType: 'ServiceRequest',
    ...originTag(naming, prescription.origin),
    identifier: [id],
    status: replaced ? 'revoked' : 'active',
    intent: prescription.by.role === 'therapist' ? 'order' : 'plan',
    code: concept(naming, 'exercise', line.exercise),
    orderDetail: orderDetails(naming, line),
    quantityQuantity: quantity(line.start.repsASet, '{repetition}'),
    subject: subjectRef(context),
    occurrenceTiming: timing(line.start, line.daysAWeek),
    ...(written ? { authoredOn: written } : {}),
    requester: deciderRef(context, prescription.by),
    performer: [subjectRef(context)],
    bodySite: line.sides.map((side) => site(naming, siteOfExercise(line.exercise), side)),
    patientInstruction: doseText(line.start),
  };
  return { resource, identifier: id, changed: replaced };
}

export const lineRequests = (context: Context, prescription: Prescription): readonly Prepared[] =>
  prescription.items.map((line) => lineRequest(context, prescription, line));

/** A step of a line's dose that was agreed to: the dose from then on, and why. */
export function doseStepRequest(context: Context, step: DoseStep): Prepared {
  const { naming } = context;
  const id = recordId(naming, step.id);
  const at = fhirMoment(step.at);
  const prescription = context.diary.find(({ id: each }) => each === step.prescriptionId);
  const line =
    prescription?.kind === 'prescription' ? prescription.items.find(({ id: each }) => each === step.itemId) : undefined;
  const reason = plainText(step.reason);
  const resource: ServiceRequest = {
    resourceType: 'ServiceRequest',
    ...originTag(naming, step.origin),
    identifier: [id],
    basedOn: [lineRef(context, step.prescriptionId, step.itemId)],
    status: 'active',
    intent: 'plan',
    code: line ? concept(naming, 'exercise', line.exercise) : concept(naming, 'order', 'dose-step'),
    orderDetail: [
      concept(naming, 'order', 'dose-step', `${step.direction === 'up' ? 'Up' : 'Back'}. Before: ${doseText(step.from)}`),
    ],
    quantityQuantity: quantity(step.to.repsASet, '{repetition}'),
    subject: subjectRef(context),
    occurrenceTiming: timing(step.to, line?.daysAWeek ?? 7),
    ...(at ? { authoredOn: at } : {}),
    requester: subjectRef(context),
    performer: [subjectRef(context)],
    ...(reason ? { reasonCode: [{ text: `${reason} (${step.by === 'rule' ? 'proposed by the rule' : 'own wish'})` }] } : {}),
    patientInstruction: doseText(step.to),
  };
  return { resource, identifier: id, changed: false };
}
