import { Fhir } from 'fhir';
import type { Fault } from './fault.ts';

const fhir = new Fhir();

/** Said as a warning where a code is of another value set than the one proposed, which our own code systems are on purpose; an error where it must be of it. */
const OTHER_CODE = / not found in value set$/;

/** What the package `fhir` finds: required codes, types of references, unknown properties. Its warnings count, but for `OTHER_CODE`. */
export function fhirFaults(resource: unknown): readonly Fault[] {
  let messages: ReturnType<typeof fhir.validate>['messages'];
  try {
    ({ messages } = fhir.validate(resource as object, { errorOnUnexpected: true }));
  } catch (error) {
    // It breaks off where it meets null.
    return [{ layer: 'fhir', where: '', what: `cannot be read: ${String(error)}` }];
  }
  return messages.flatMap(({ severity, location, message }) =>
    `${severity}` === 'info' || (`${severity}` === 'warning' && OTHER_CODE.test(message ?? ''))
      ? []
      : [{ layer: 'fhir', where: location ?? '', what: message ?? '' }],
  );
}
