import type { Observation } from '@medplum/fhirtypes';
import type { Removal } from '../dose/removal.ts';
import { siteOfExercise } from './body-site.ts';
import { category, concept, site } from './concept.ts';
import { fhirMoment } from './plain-text.ts';
import type { Context, Prepared } from './prepared.ts';
import { recordId } from './record-id.ts';
import { subjectRef } from './subject.ts';

/** What takes the place of a set that was taken back: FHIR's own way to say that it does not hold. None where nobody knows what the set was. */
export function removedObservation(context: Context, { recordId: id, what }: Removal): readonly Prepared[] {
  if (!what) return [];
  const { naming } = context;
  const identifier = recordId(naming, id);
  const at = fhirMoment(what.doneAt);
  const resource: Observation = {
    resourceType: 'Observation',
    identifier: [identifier],
    status: 'entered-in-error',
    category: category('therapy'),
    code: concept(naming, 'measure', `${what.exercise}-set`),
    subject: subjectRef(context),
    ...(at ? { effectiveDateTime: at } : {}),
    ...(what.exercise === 'own' ? {} : { bodySite: site(naming, siteOfExercise(what.exercise), what.side) }),
  };
  return [{ resource, identifier, changed: true }];
}
