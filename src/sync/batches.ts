import type { Prepared } from '../fhir/prepared.ts';
import type { Parcel } from './parcels.ts';

/** Bounds of one transaction, so that a server on a slow line does it in one go. Chosen; a parcel that is larger goes alone. */
export const MOST_ENTRIES = 50;
export const MOST_BYTES = 500_000;

/** Each resource once: what several parcels share (person, program, an earlier plan) goes along in one of them. */
export function resourcesIn(parcels: readonly Parcel[]): readonly Prepared[] {
  const all = new Map<string, Prepared>();
  for (const each of parcels.flatMap(({ prepared }) => prepared)) {
    const key = `${each.resource.resourceType}|${each.identifier.system}|${each.identifier.value}`;
    const before = all.get(key);
    if (!before || (each.changed && !before.changed)) all.set(key, each);
  }
  return [...all.values()];
}

const bytesOf = ({ prepared }: Parcel): number =>
  prepared.reduce((sum, { resource }) => sum + JSON.stringify(resource).length, 0);

/** The parcels in their order, as many together as a transaction may hold. */
export function batchesOf(parcels: readonly Parcel[]): readonly (readonly Parcel[])[] {
  const batches: Parcel[][] = [];
  let [entries, bytes] = [0, 0];
  for (const parcel of parcels) {
    const more = bytesOf(parcel);
    const last = batches.at(-1);
    if (last && entries + parcel.prepared.length <= MOST_ENTRIES && bytes + more <= MOST_BYTES) last.push(parcel);
    else {
      batches.push([parcel]);
      [entries, bytes] = [0, 0];
    }
    entries += parcel.prepared.length;
    bytes += more;
  }
  return batches;
}
