import type { ElementDefinition, StructureDefinition } from '@medplum/fhirtypes';
import { structureDefinitions } from './structure-definitions.ts';

/** A value of a resource with the definition of its element. */
export interface TypedNode {
  readonly value: unknown;
  /** Where it stands, e.g. `Observation.component[2].code`. */
  readonly where: string;
  readonly type: string;
  /** Of the element where it stands, and of its type itself. */
  readonly definitions: readonly ElementDefinition[];
}

/** The definitions give the ids of resources as plain text of FHIRPath; their pattern stands with the type `id`. */
const typeOf = (element: ElementDefinition, type: string): string => (element.base?.path === 'Resource.id' ? 'id' : type);
const FHIRPATH_TYPE = 'http://hl7.org/fhirpath/System.';
type Fields = Readonly<Record<string, unknown>>;
const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null && !Array.isArray(value);

const elementsOf = (definition: StructureDefinition): readonly ElementDefinition[] => definition.snapshot?.element ?? [];

const children = new Map<string, readonly ElementDefinition[]>();
/** The elements one level below a path; of each asked once. */
export function childrenOf(definition: StructureDefinition, path: string): readonly ElementDefinition[] {
  const key = `${definition.name} ${path}`;
  const known = children.get(key);
  if (known) return known;
  const found = elementsOf(definition).filter(
    (element) => element.path?.startsWith(`${path}.`) && !element.path.slice(path.length + 1).includes('.'),
  );
  children.set(key, found);
  return found;
}

/** The property under which an element stands, and its type; several for a choice such as `value[x]`. */
function namesOf(element: ElementDefinition): readonly (readonly [name: string, type: string])[] {
  const last = element.path?.split('.').at(-1) ?? '';
  const types = (element.type ?? []).map(({ code }) => code ?? '');
  if (!last.endsWith('[x]')) return [[last, types[0] ?? '']];
  const stem = last.slice(0, -3);
  return types.map((type) => [`${stem}${type.slice(0, 1).toUpperCase()}${type.slice(1)}`, type] as const);
}

/** Every value of a resource, down to the primitives; not of the resources in a bundle, which are looked at alone. @param type name of its type */
export function* typedNodes(
  value: unknown,
  type: string,
  where: string,
  at: readonly ElementDefinition[] = [],
): Iterable<TypedNode> {
  const definition = structureDefinitions().get(type);
  if (!definition) return;
  const root = elementsOf(definition)[0];
  yield { value, where, type, definitions: root ? [...at, root] : at };
  yield* below(value, definition, type, where);
}

function* below(value: unknown, definition: StructureDefinition, path: string, where: string): Iterable<TypedNode> {
  if (!isFields(value)) return;
  for (const element of childrenOf(definition, path)) {
    for (const [name, said] of namesOf(element)) {
      const type = typeOf(element, said);
      const found = value[name];
      if (found === undefined || type.startsWith(FHIRPATH_TYPE) || element.path === 'Bundle.entry.resource') continue;
      const many = Array.isArray(found);
      if (many && found.length === 0) yield { value: found, where: `${where}.${name}`, type, definitions: [element] };
      for (const [i, each] of (many ? found : [found]).entries()) {
        const place = `${where}.${name}${many ? `[${i}]` : ''}`;
        const { contentReference } = element;
        if (contentReference) {
          yield { value: each, where: place, type: 'BackboneElement', definitions: [element] };
          yield* below(each, definition, contentReference.slice(1), place);
        } else if (type === 'BackboneElement' || type === 'Element') {
          yield { value: each, where: place, type, definitions: [element] };
          yield* below(each, definition, element.path ?? '', place);
        } else {
          const own = type === 'Resource' && isFields(each) && typeof each.resourceType === 'string' ? each.resourceType : type;
          yield* typedNodes(each, own, place, [element]);
        }
      }
    }
  }
}
