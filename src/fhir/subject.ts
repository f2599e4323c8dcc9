import type { Patient, Reference } from '@medplum/fhirtypes';
import { identifier } from './naming.ts';
import { plainText } from './plain-text.ts';
import { type Context, type Prepared, refTo } from './prepared.ts';

/** Who did, felt and told it all. */
export function subjectRef({ naming, subject }: Context): Reference<Patient> {
  return subject.kind === 'existing'
    ? { reference: subject.reference }
    : refTo<Patient>('Patient', identifier(naming, 'person', subject.id));
}

/** The person: our identifier and, where wanted, a name; nothing else is known. None when the server knows them already. */
export function patientOf({ naming, subject }: Context): readonly Prepared[] {
  if (subject.kind === 'existing') return [];
  const id = identifier(naming, 'person', subject.id);
  const text = subject.name === null ? undefined : plainText(subject.name);
  const resource: Patient = { resourceType: 'Patient', identifier: [id], ...(text ? { name: [{ text }] } : {}) };
  return [{ resource, identifier: id, changed: false }];
}
