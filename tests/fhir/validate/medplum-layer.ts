import { OperationOutcomeError, validateResource } from '@medplum/core';
import type { Resource } from '@medplum/fhirtypes';
import type { Fault } from './fault.ts';
import { structureDefinitions } from './structure-definitions.ts';

/** What `@medplum/core` finds: cardinalities, types, unknown properties, invariants it knows. Its warnings count. */
export function medplumFaults(resource: unknown): readonly Fault[] {
  structureDefinitions();
  const faultsOf = (issues: ReturnType<typeof validateResource>): readonly Fault[] =>
    issues.map(({ expression, details, diagnostics }) => ({
      layer: 'medplum',
      where: expression?.join(', ') ?? '',
      what: details?.text ?? diagnostics ?? '',
    }));
  try {
    return faultsOf(validateResource(resource as Resource));
  } catch (error) {
    // Errors are thrown, warnings given back.
    if (error instanceof OperationOutcomeError) return faultsOf(error.outcome.issue ?? []);
    throw error;
  }
}
