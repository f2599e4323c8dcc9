import type { Fault } from './fault.ts';

type Fields = Readonly<Record<string, unknown>>;
const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * A bundle whose references by `urn:uuid:` name the type of what they lead to, as a server would write them, so that the type can be checked. One that leads
 * nowhere is a fault.
 */
export function resolvedReferences(bundle: unknown): { readonly resolved: unknown; readonly faults: readonly Fault[] } {
  const entries = isFields(bundle) && Array.isArray(bundle.entry) ? bundle.entry.filter(isFields) : [];
  const types = new Map(
    entries.flatMap(({ fullUrl, resource }) =>
      typeof fullUrl === 'string' && isFields(resource) ? [[fullUrl, String(resource.resourceType)] as const] : [],
    ),
  );
  const faults: Fault[] = [];
  const resolve = (value: unknown, where: string): unknown => {
    if (Array.isArray(value)) return value.map((each, i) => resolve(each, `${where}[${i}]`));
    if (!isFields(value)) return value;
    const { reference } = value;
    if (typeof reference === 'string' && reference.startsWith('urn:uuid:')) {
      const type = types.get(reference);
      if (type) return { ...value, reference: `${type}/${reference.slice('urn:uuid:'.length)}` };
      faults.push({ layer: 'bundle', where, what: `${reference} leads nowhere` });
    }
    return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, resolve(each, `${where}.${key}`)]));
  };
  return { resolved: resolve(bundle, 'Bundle'), faults };
}
