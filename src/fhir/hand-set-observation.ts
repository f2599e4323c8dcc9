import type { Observation } from '@medplum/fhirtypes';
import type { HandSet } from '../dose/done-set.ts';
import { siteOfExercise } from './body-site.ts';
import { absent, category, concept, site } from './concept.ts';
import { originTag } from './origin-tag.ts';
import { fhirMoment } from './plain-text.ts';
import type { Context, Prepared } from './prepared.ts';
import { quantity } from './quantity.ts';
import { lineHeldAt, recordId } from './record-id.ts';
import { subjectRef } from './subject.ts';

/** A set without the camera: its count, and that nobody measured its range. */
export function handSetObservation(context: Context, entry: HandSet): Prepared {
  const { naming } = context;
  const id = recordId(naming, entry.id);
  const basedOn = lineHeldAt(context, entry.itemId, entry.at);
  const at = fhirMoment(entry.at);
  const resource: Observation = {
    resourceType: 'Observation',
    ...originTag(naming, entry.origin),
    identifier: [id],
    ...(basedOn.length > 0 ? { basedOn: [...basedOn] } : {}),
    status: 'final',
    category: category('therapy'),
    code: concept(naming, 'measure', `${entry.exercise}-set`),
    subject: subjectRef(context),
    ...(at ? { effectivePeriod: { end: at } } : {}),
    valueQuantity: quantity(entry.reps, '{repetition}'),
    bodySite: site(naming, siteOfExercise(entry.exercise), entry.side),
    method: concept(naming, 'method', entry.counted),
    component: [{ code: concept(naming, 'measure', 'median-range'), ...absent('not-performed') }],
  };
  return { resource, identifier: id, changed: false };
}
