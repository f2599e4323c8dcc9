import type { Observation, ObservationComponent } from '@medplum/fhirtypes';
import type { AngleMark } from '../symptoms/angle-mark.ts';
import { siteOfExercise } from './body-site.ts';
import { category, concept, site } from './concept.ts';
import { deviceRef } from './device.ts';
import { errorNote } from './error-note.ts';
import { originTag } from './origin-tag.ts';
import { fhirMoment } from './plain-text.ts';
import type { Context, Prepared } from './prepared.ts';
import { quantity } from './quantity.ts';
import { recordId } from './record-id.ts';
import { subjectRef } from './subject.ts';
import { ANGLE_CODES } from './terms.ts';

/** An angle that a therapist marked: where symptoms began, or where the movement ended, with its error. */
export function angleMarkObservation(context: Context, entry: AngleMark): Prepared {
  const { naming } = context;
  const id = recordId(naming, entry.id);
  const at = fhirMoment(entry.at);
  const component: ObservationComponent[] = [
    { code: concept(naming, 'measure', 'exercise'), valueCodeableConcept: concept(naming, 'exercise', entry.exercise) },
    { code: concept(naming, 'measure', 'angle-error'), valueQuantity: quantity(entry.errorDeg, 'deg') },
    { code: concept(naming, 'measure', 'zero'), valueCodeableConcept: concept(naming, 'remark', entry.zero) },
    { code: concept(naming, 'measure', 'trial'), valueString: `${entry.trial}` },
  ];
  if (entry.foot)
    component.push({
      code: concept(naming, 'measure', 'foot-held'),
      valueCodeableConcept: concept(naming, 'remark', entry.foot),
    });
  if (entry.place) {
    const { region, side } = entry.place;
    component.push({ code: concept(naming, 'measure', 'symptom-place'), valueCodeableConcept: site(naming, region, side) });
  }
  const resource: Observation = {
    resourceType: 'Observation',
    ...originTag(naming, entry.origin),
    identifier: [id],
    status: 'final',
    category: category('exam'),
    code: concept(naming, 'measure', ANGLE_CODES[entry.mark]),
    subject: subjectRef(context),
    ...(at ? { effectiveDateTime: at } : {}),
    valueQuantity: quantity(entry.angleDeg, 'deg'),
    bodySite: site(naming, siteOfExercise(entry.exercise), entry.side),
    method: concept(naming, 'method', entry.method),
    device: deviceRef(context),
    note: [errorNote('the angle', entry.errorDeg)],
    component,
  };
  return { resource, identifier: id, changed: false };
}
