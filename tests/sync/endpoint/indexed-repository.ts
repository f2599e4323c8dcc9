import { deepClone, matchesSearchRequest, Operator, type SearchRequest, type WithId } from '@medplum/core';
import { MemoryRepository } from '@medplum/fhir-router';
import type { Bundle, Resource } from '@medplum/fhirtypes';

interface Held {
  readonly identifiers?: unknown;
  readonly resource: Resource;
}

const identifiersOf = (resource: Resource): readonly string[] => {
  const { identifier } = resource as { readonly identifier?: unknown };
  return (Array.isArray(identifier) ? identifier : []).map(({ system, value }) => `${resource.resourceType}|${system}|${value}`);
};
const patientOf = (resource: Resource): string | null => {
  const { subject } = resource as { readonly subject?: { readonly reference?: string } };
  return subject?.reference ? `${resource.resourceType}|${subject.reference}` : null;
};

/**
 * The router's repository in memory, with an index by identifier and by patient (its own search looks at every resource), with transactions that are all or
 * nothing (its own keep what was written before a failure), and with the clock of whoever uses it.
 */
export class IndexedRepository extends MemoryRepository {
  private readonly held = new Map<string, Held>();
  private readonly byIdentifier = new Map<string, Set<string>>();
  private readonly byPatient = new Map<string, Set<string>>();
  private undo: (() => Promise<void>)[] | null = null;
  private readonly clock: () => number;

  constructor(clock: () => number) {
    super();
    this.clock = clock;
  }

  private index(resource: Resource, key: string): void {
    this.held.set(key, { resource });
    for (const name of identifiersOf(resource)) this.byIdentifier.set(name, (this.byIdentifier.get(name) ?? new Set()).add(key));
    const patient = patientOf(resource);
    if (patient) this.byPatient.set(patient, (this.byPatient.get(patient) ?? new Set()).add(key));
  }

  private unindex(key: string): void {
    const before = this.held.get(key);
    if (!before) return;
    this.held.delete(key);
    for (const name of identifiersOf(before.resource)) this.byIdentifier.get(name)?.delete(key);
    const patient = patientOf(before.resource);
    if (patient) this.byPatient.get(patient)?.delete(key);
  }

  override async createResource<T extends Resource>(resource: T): Promise<WithId<T>> {
    const id = resource.id ?? this.generateId();
    const key = `${resource.resourceType}/${id}`;
    const before = this.held.get(key)?.resource;
    const meta = { ...resource.meta, lastUpdated: new Date(this.clock()).toISOString() };
    const created = await super.createResource<T>({ ...resource, id, meta });
    this.unindex(key);
    this.index(created, key);
    this.undo?.push(async () => {
      this.unindex(key);
      if (before) {
        await super.createResource(before);
        this.index(before, key);
      } else await super.deleteResource(resource.resourceType, id);
    });
    return deepClone(created);
  }

  private candidates({ resourceType, filters }: SearchRequest): readonly string[] | null {
    for (const { code, value } of filters ?? []) {
      if (code === 'identifier') return [...(this.byIdentifier.get(`${resourceType}|${value}`) ?? [])];
      if (code === 'patient' || code === 'subject') return [...(this.byPatient.get(`${resourceType}|${value}`) ?? [])];
    }
    return null;
  }

  override async search<T extends Resource>(request: SearchRequest<T>): Promise<Bundle<WithId<T>>> {
    const keys = this.candidates(request);
    if (!keys) return super.search(request);
    // Looked at first, since the rest is slow; what it lets through is asked in full all the same.
    const since = request.filters?.find(
      ({ code, operator }) => code === '_lastUpdated' && operator === Operator.GREATER_THAN_OR_EQUALS,
    )?.value;
    const found = keys
      .flatMap((key) => this.held.get(key)?.resource ?? [])
      .filter(({ meta }) => since === undefined || (meta?.lastUpdated ?? '') >= since)
      .filter((resource) => matchesSearchRequest(resource, request)) as WithId<T>[];
    if (request.sortRules?.[0]?.code === '_lastUpdated')
      found.sort((a, b) => (a.meta?.lastUpdated ?? '').localeCompare(b.meta?.lastUpdated ?? ''));
    const from = request.offset ?? 0;
    const page = found.slice(from, from + (request.count ?? 20));
    return {
      resourceType: 'Bundle',
      type: 'searchset',
      ...(page.length > 0 ? { entry: page.map((resource) => ({ resource: deepClone(resource) })) } : {}),
      total: found.length,
    };
  }

  /** Runs `body`; when it throws, everything is as it was. One at a time: the caller sees to it. */
  async wholly<T>(body: () => Promise<T>): Promise<T> {
    this.undo = [];
    try {
      return await body();
    } catch (cause) {
      const undo = this.undo.toReversed();
      this.undo = null;
      for (const step of undo) await step();
      throw cause;
    } finally {
      this.undo = null;
    }
  }

  /** Every resource of a type. */
  all(type: string): readonly Resource[] {
    return [...this.held.values()].flatMap(({ resource }) => (resource.resourceType === type ? [resource] : []));
  }
}
