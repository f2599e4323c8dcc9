import type { Prescription } from '../dose/prescription.ts';
import type { Context, Prepared } from '../fhir/prepared.ts';
import { resourcesOf } from '../fhir/resources.ts';
import type { DiaryEntry } from '../record/diary-entry.ts';
import { SELF } from '../record/person.ts';
import type { StoredSet } from '../record/stored-set.ts';
import type { Waiting } from '../record/sync/sync-store.ts';
import { byMoment } from '../symptoms/entry.ts';

/** Resources that are sent together or not at all, and the records that the server has then. */
export interface Parcel {
  readonly prepared: readonly Prepared[];
  /** Ids of records. */
  readonly confirms: readonly string[];
}

const isWaiting = (waiting: Waiting) => (id: string) => waiting.ids.has(id);

/** Documents of records that the server has already need not go again. */
const needed = ({ prepared }: { readonly prepared: readonly Prepared[] }, waiting: Waiting): readonly Prepared[] =>
  prepared.filter(
    ({ resource, identifier }) => resource.resourceType !== 'DocumentReference' || waiting.ids.has(identifier.value),
  );

/** A set with its changes and links. One that the server had before is shown anew there. */
function setParcel(context: Context, set: StoredSet, links: readonly DiaryEntry[], waiting: Waiting): Parcel {
  const known = !waiting.ids.has(set.id);
  // Whose it is says the subject; the id that a person has on one machine is nobody else's business.
  const found = resourcesOf(context, [{ ...set, person: SELF }], links);
  const prepared = needed(found, waiting).map((each) =>
    known && each.resource.resourceType === 'Observation' ? { ...each, changed: true } : each,
  );
  return {
    prepared,
    confirms: [set.id, ...set.edits.map(({ id }) => id), ...links.map(({ id }) => id)].filter(isWaiting(waiting)),
  };
}

const isPlan = (entry: DiaryEntry): entry is Prescription => entry.kind === 'prescription';

/** The plan that a new one takes the place of: it is shown as revoked. */
function planBefore(context: Context, plan: Prescription): readonly Prescription[] {
  const before = context.diary.filter(isPlan).filter((each) => byMoment(each, plan) < 0);
  return before.toSorted(byMoment).slice(-1);
}

/** What waits, in parts that can be sent one by one, in the order in which they can be understood: plans, sets, what was told. */
export function parcelsOf(context: Context, waiting: Waiting): readonly Parcel[] {
  const isHere = new Set(waiting.sets.map(({ id }) => id));
  const linksOf = (setId: string) => waiting.entries.filter((entry) => entry.kind === 'set-link' && entry.setId === setId);
  const ofEntry = (entry: DiaryEntry): Parcel => ({
    prepared: needed(resourcesOf(context, [], isPlan(entry) ? [...planBefore(context, entry), entry] : [entry]), waiting),
    confirms: [entry.id],
  });
  const plans = waiting.entries.filter(isPlan).toSorted(byMoment);
  const others = waiting.entries.filter((entry) => !isPlan(entry) && !(entry.kind === 'set-link' && isHere.has(entry.setId)));
  return [
    ...plans.map(ofEntry),
    ...waiting.sets.map((set) => setParcel(context, set, linksOf(set.id), waiting)),
    ...others.map(ofEntry),
  ].filter(({ confirms }) => confirms.length > 0);
}
