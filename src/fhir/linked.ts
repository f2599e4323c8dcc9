import type { Known, Prepared } from './prepared.ts';

const keyOf = (type: string, { system, value }: Known): string => `${type} ${system} ${value}`;

const isKnown = (value: unknown): value is Known =>
  typeof value === 'object' && value !== null && 'system' in value && 'value' in value;

/** A resource of a bundle under its address there. */
export interface Addressed extends Prepared {
  readonly fullUrl: string;
}

/** The same value, with every reference by identifier that `addresses` knows made one by address. */
function withAddresses(value: unknown, addresses: ReadonlyMap<string, string>): unknown {
  if (Array.isArray(value)) return value.map((each) => withAddresses(each, addresses));
  if (typeof value !== 'object' || value === null) return value;
  if ('type' in value && typeof value.type === 'string' && 'identifier' in value && isKnown(value.identifier)) {
    const reference = addresses.get(keyOf(value.type, value.identifier));
    if (reference) return { reference };
  }
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, withAddresses(each, addresses)]));
}

/**
 * Gives each resource an address and makes references of it. One that is there twice is kept once. A reference to what is not in the bundle stays one by our
 * identifier, by which a server can find it.
 * @param newId a fresh UUID with each call
 */
export function linked(prepared: readonly Prepared[], newId: () => string): readonly Addressed[] {
  const byKey = new Map(prepared.map((each) => [keyOf(each.resource.resourceType, each.identifier), each]));
  const addresses = new Map([...byKey.keys()].map((key) => [key, `urn:uuid:${newId()}`]));
  return [...byKey].map(([key, each]) => ({
    ...each,
    resource: withAddresses(each.resource, addresses) as Prepared['resource'],
    fullUrl: addresses.get(key) ?? '',
  }));
}
