import type { Annotation, Observation, Period } from '@medplum/fhirtypes';
import type { SetLink } from '../dose/done-set.ts';
import { editedCount } from '../record/rep-edit.ts';
import { setEndMs } from '../record/set-end.ts';
import type { StoredSet } from '../record/stored-set.ts';
import { originOf } from '../record/table-sets.ts';
import { siteOfSet } from './body-site.ts';
import { absent, category, concept, site } from './concept.ts';
import { deviceRef } from './device.ts';
import { errorNote, UNKNOWN_ERROR } from './error-note.ts';
import { identifier } from './naming.ts';
import { originTag } from './origin-tag.ts';
import { fhirMoment, plainText } from './plain-text.ts';
import type { Context, Prepared } from './prepared.ts';
import { quantity } from './quantity.ts';
import { lineRef, recordId, setRef } from './record-id.ts';
import { rangeErrorOf, setComponents } from './set-components.ts';
import { subjectRef } from './subject.ts';

/** From the start of counting to the last repetition's end; the end only of a set that ended. */
function periodOf(set: StoredSet): { effectivePeriod?: Period } {
  const start = fhirMoment(set.startedAt);
  if (start === undefined) return {};
  const end = set.result ? fhirMoment(setEndMs(set)) : undefined;
  return { effectivePeriod: { start, ...(end !== undefined && end >= start ? { end } : {}) } };
}

/** The error in words; then what was typed, where that goes along: the name of an own exercise, the notes of changes by hand. */
function notesOf(set: StoredSet, texts: boolean): { note?: Annotation[] } {
  const error = rangeErrorOf(set);
  const note = [...(error === null ? [] : [errorNote('one repetition’s range', error)]), ...(texts ? typedNotes(set) : [])];
  return note.length > 0 ? { note } : {};
}

function typedNotes(set: StoredSet): readonly Annotation[] {
  const name = set.definition && plainText(set.definition.name);
  const texts = [name ? `Exercise: ${name}` : undefined, ...set.edits.map(({ note }) => note && plainText(note))];
  return texts.flatMap((text) => (text ? [{ text }] : []));
}

/** What the observations of one set share. */
const commonOf = (context: Context, set: StoredSet, link: SetLink | null) => ({
  ...originTag(context.naming, originOf(set, link)),
  category: category('therapy'),
  subject: subjectRef(context),
  ...periodOf(set),
  bodySite: site(context.naming, siteOfSet(set), set.side),
  device: deviceRef(context),
});

/** Where symptoms began in a set. Its error is not known: it is the angle when the person said so. */
function onsetOf(context: Context, set: StoredSet, link: SetLink | null): readonly Prepared[] {
  const onset = set.result?.onset;
  if (!onset) return [];
  const { naming } = context;
  const id = identifier(naming, 'onset', set.id);
  const resource: Observation = {
    resourceType: 'Observation',
    identifier: [id],
    status: 'final',
    ...commonOf(context, set, link),
    code: concept(naming, 'measure', 'angle-at-symptom-onset'),
    ...(onset.angleDeg === null ? absent('unknown') : { valueQuantity: quantity(onset.angleDeg, 'deg') }),
    method: concept(naming, 'method', 'camera-2d'),
    ...(onset.angleDeg === null ? {} : { note: [UNKNOWN_ERROR] }),
    derivedFrom: [setRef(context, set.id)],
    component: [
      { code: concept(naming, 'measure', 'exercise'), valueCodeableConcept: concept(naming, 'exercise', set.exercise) },
      { code: concept(naming, 'measure', 'angle-error'), ...absent('unknown') },
      { code: concept(naming, 'measure', 'onset-time'), valueQuantity: quantity(onset.tMs, 'ms') },
    ],
  };
  return [{ resource, identifier: id, changed: false }];
}

/**
 * A measured set: its count after changes by hand, its summary and every repetition; and the angle at which symptoms began.
 * @param link the line of a prescription that it was done for; null when nobody said
 */
export function setObservations(context: Context, set: StoredSet, link: SetLink | null): readonly Prepared[] {
  const { naming } = context;
  const id = recordId(naming, set.id);
  const resource: Observation = {
    resourceType: 'Observation',
    identifier: [id],
    status: set.edits.length > 0 ? 'amended' : 'final',
    ...commonOf(context, set, link),
    ...(link ? { basedOn: [lineRef(context, link.prescriptionId, link.itemId)] } : {}),
    code: concept(naming, 'measure', `${set.exercise}-set`),
    valueQuantity: quantity(editedCount(set), '{repetition}'),
    method: concept(
      naming,
      'method',
      'camera-2d',
      `Camera, angle in the picture; source ${set.source}, ${set.model === 'stickers' ? 'three stickers on the skin' : `pose model ${set.model}`}`,
    ),
    ...notesOf(set, context.texts),
    component: setComponents(naming, set),
  };
  return [{ resource, identifier: id, changed: set.edits.length > 0 }, ...onsetOf(context, set, link)];
}
