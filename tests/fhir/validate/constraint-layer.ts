import type { ElementDefinitionConstraint } from '@medplum/fhirtypes';
import fhirpath from 'fhirpath';
import r4 from 'fhirpath/fhir-context/r4';
import type { Fault } from './fault.ts';
import { structureDefinitions } from './structure-definitions.ts';
import { childrenOf, type TypedNode, typedNodes } from './typed-walk.ts';

const REGEX = 'http://hl7.org/fhir/StructureDefinition/regex';
/**
 * Left out. `dom-6`: that a resource should have a text for people is advice. `ele-1`: asks what the walk asks of every object. `txt-1`, `txt-2`: of the
 * XHTML of such texts, which the engine can't check; we write none.
 */
const LEFT_OUT = new Set(['dom-6', 'ele-1', 'txt-1', 'txt-2']);

type Check = (node: unknown, resource: unknown) => boolean;
const compiled = new Map<string, Check>();

/** The constraint as a function. The engine knows the type of the node by its path. */
function checkOf(path: string, expression: string): Check {
  const key = `${path} ${expression}`;
  const known = compiled.get(key);
  if (known) return known;
  // Some constraints print what they find.
  const run = fhirpath.compile({ base: path, expression }, r4, { traceFn: () => undefined });
  const check: Check = (node, resource) => {
    const [first] = run(node, { resource, rootResource: resource }) as readonly unknown[];
    // Nothing is no "false".
    return first !== false;
  };
  compiled.set(key, check);
  return check;
}

const patterns = new Map<string, RegExp | null>();
/** The pattern of a primitive type's value, which its definition has. */
function patternOf(type: string): RegExp | null {
  const known = patterns.get(type);
  if (known !== undefined) return known;
  const elements = structureDefinitions().get(type)?.snapshot?.element ?? [];
  const value = elements.find(({ path }) => path === `${type}.value`);
  const source = value?.type?.[0]?.extension?.find(({ url }) => url === REGEX)?.valueString;
  const pattern = source === undefined ? null : new RegExp(`^(?:${source})$`);
  patterns.set(type, pattern);
  return pattern;
}

const isPrimitive = (type: string): boolean => structureDefinitions().get(type)?.kind === 'primitive-type';

/** Kinds of primitives that JSON writes as something else than text. */
const JSON_TYPES: Readonly<Record<string, string>> = {
  boolean: 'boolean',
  integer: 'number',
  positiveInt: 'number',
  unsignedInt: 'number',
  decimal: 'number',
};

function primitiveFaults({ value, where, type }: TypedNode): readonly Fault[] {
  const fault = (what: string): readonly Fault[] => [{ layer: 'constraints', where, what }];
  const wanted = JSON_TYPES[type] ?? 'string';
  if (typeof value !== wanted) return fault(`${type} must be a ${wanted}, not ${JSON.stringify(value)}`);
  const pattern = patternOf(type);
  return pattern && !pattern.test(`${value}`) ? fault(`${JSON.stringify(value)} is no ${type}`) : [];
}

const isEmpty = (value: unknown): boolean => value === null || (typeof value === 'object' && Object.keys(value).length === 0);

const nameOf = (stem: string, type = ''): string => `${stem}${type.slice(0, 1).toUpperCase()}${type.slice(1)}`;

/** Whether two of the kinds of one choice, such as `valueQuantity` and `valueString`, are there. */
function choiceFaults({ value, where, type, definitions }: TypedNode): readonly Fault[] {
  if (typeof value !== 'object' || value === null) return [];
  const path = (type === 'BackboneElement' ? definitions[0]?.path : undefined) ?? type;
  const definition = structureDefinitions().get(path.split('.', 1)[0] ?? '');
  return (definition ? childrenOf(definition, path) : []).flatMap((element): readonly Fault[] => {
    if (!element.path?.endsWith('[x]')) return [];
    const stem = element.path.slice(path.length + 1, -3);
    const there = (element.type ?? []).map(({ code }) => nameOf(stem, code)).filter((kind) => kind in value);
    return there.length > 1 ? [{ layer: 'constraints', where, what: `only one of ${there.join(', ')} may be there` }] : [];
  });
}

function constraintFaults(node: TypedNode, resource: unknown): readonly Fault[] {
  const constraints = new Map<string, readonly [path: string, ElementDefinitionConstraint]>();
  for (const definition of node.definitions)
    for (const each of definition.constraint ?? [])
      if (!LEFT_OUT.has(each.key ?? '')) constraints.set(each.key ?? '', [definition.path ?? '', each]);
  return [...constraints.values()].flatMap(([path, { key, human, expression }]): readonly Fault[] => {
    if (expression === undefined || checkOf(path, expression)(node.value, resource)) return [];
    return [{ layer: 'constraints', where: node.where, what: `${key}: ${human}` }];
  });
}

/** What the definitions' own constraints, run by fhirpath, and their patterns of primitive values find. Constraints that only warn count, too. */
export function constraintLayerFaults(resource: unknown): readonly Fault[] {
  const { resourceType } = resource as { readonly resourceType?: unknown };
  if (typeof resourceType !== 'string' || !structureDefinitions().has(resourceType))
    return [{ layer: 'constraints', where: '', what: `${JSON.stringify(resourceType)} is no resource of R4` }];
  return [...typedNodes(resource, resourceType, resourceType)].flatMap((node) => {
    if (isEmpty(node.value)) return [{ layer: 'constraints' as const, where: node.where, what: 'must not be empty' }];
    if (isPrimitive(node.type)) return primitiveFaults(node);
    return [...choiceFaults(node), ...constraintFaults(node, resource)];
  });
}
