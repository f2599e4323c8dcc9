import type { DocumentReference, Reference } from '@medplum/fhirtypes';
import type { Entry } from '../symptoms/entry.ts';
import { toBase64 } from './base64.ts';
import { concept } from './concept.ts';
import { originTag } from './origin-tag.ts';
import { fhirMoment } from './plain-text.ts';
import type { Context, Prepared } from './prepared.ts';
import { envelopeText, idOfRecord, type TravellingRecord } from './record-envelope.ts';
import { recordId } from './record-id.ts';
import { sha1 } from './sha1.ts';
import { subjectRef } from './subject.ts';

const momentOf = (record: TravellingRecord): string => {
  if (record.kind === 'set') return record.set.startedAt;
  return record.kind === 'edit' ? record.edit.at : record.entry.at;
};

/**
 * A record whole, as the JSON that it is, in a document beside the resource that shows it: nothing of it is lost, and it is read back exactly.
 * @param shownBy the resource made of it; null when none shows it
 */
export function recordDocument(
  context: Context,
  record: TravellingRecord,
  shownBy: Reference | null,
  origin: Entry['origin'],
): Prepared {
  const { naming } = context;
  const id = recordId(naming, idOfRecord(record));
  const bytes = new TextEncoder().encode(envelopeText(record));
  const date = fhirMoment(momentOf(record));
  const resource: DocumentReference = {
    resourceType: 'DocumentReference',
    ...originTag(naming, origin),
    identifier: [id],
    status: 'current',
    type: concept(naming, 'record', record.kind),
    subject: subjectRef(context),
    ...(date ? { date } : {}),
    content: [
      {
        attachment: {
          contentType: 'application/json',
          data: toBase64(bytes),
          size: bytes.length,
          hash: toBase64(sha1(bytes)),
        },
      },
    ],
    ...(shownBy ? { context: { related: [shownBy] } } : {}),
  };
  return { resource, identifier: id, changed: false };
}
