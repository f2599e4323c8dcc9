import { constraintLayerFaults } from './constraint-layer.ts';
import type { Fault } from './fault.ts';
import { fhirFaults } from './fhir-layer.ts';
import { medplumFaults } from './medplum-layer.ts';
import { resolvedReferences } from './resolved-references.ts';

const ofOne = (resource: unknown): readonly Fault[] => [
  ...medplumFaults(resource),
  ...fhirFaults(resource),
  ...constraintLayerFaults(resource),
];

function ofBundle(bundle: unknown): readonly Fault[] {
  const { resolved, faults } = resolvedReferences(bundle);
  const { entry } = resolved as { readonly entry?: unknown };
  const entries: readonly { readonly resource?: unknown }[] = Array.isArray(entry) ? entry : [];
  const inside = entries.flatMap(({ resource }, i) =>
    resource === undefined ? [] : ofOne(resource).map((fault) => ({ ...fault, where: `entry[${i}] ${fault.where}` })),
  );
  return [...faults, ...ofOne(resolved), ...inside];
}

/**
 * What three layers find wrong with a resource of FHIR R4; none finds all. Of a bundle, each resource is looked at alone and the bundle as a whole.
 * @param resource a value as JSON gives it
 */
export const faultsOf = (resource: unknown): readonly Fault[] =>
  (resource as { readonly resourceType?: unknown }).resourceType === 'Bundle' ? ofBundle(resource) : ofOne(resource);
