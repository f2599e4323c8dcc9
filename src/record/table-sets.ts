import type { HandSet, SetLink } from '../dose/done-set.ts';
import { localTime } from '../dose/local-time.ts';
import type { CalendarDay } from '../symptoms/calendar-day.ts';
import type { Entry } from '../symptoms/entry.ts';
import type { DiaryEntry } from './diary-entry.ts';
import type { StoredSet } from './stored-set.ts';

/** A measured set with what the diary knows of it. */
export interface TableSet {
  readonly set: StoredSet;
  /** The line of the prescription that it was done for; null when nobody said. */
  readonly link: SetLink | null;
  readonly origin: Entry['origin'];
  /** The day on the person's own calendar. */
  readonly day: CalendarDay;
}

/** Whether a set is invented: the recorded example, or one that an invented link names. */
export const originOf = ({ source }: Pick<StoredSet, 'source'>, link: SetLink | null): Entry['origin'] =>
  source === 'example' || link?.origin === 'example' ? 'example' : 'own';

/** The links of the diary by the set that they name. */
export const linksBySet = (diary: readonly DiaryEntry[]): ReadonlyMap<string, SetLink> =>
  new Map(diary.flatMap((entry) => (entry.kind === 'set-link' ? [[entry.setId, entry] as const] : [])));

/**
 * The measured sets, oldest first, each with its link.
 * @param timeZone IANA name; on which day a set was done when no link says so
 */
export function tableSets(sets: readonly StoredSet[], diary: readonly DiaryEntry[], timeZone: string): readonly TableSet[] {
  const links = linksBySet(diary);
  return sets
    .toSorted((a, b) => (a.startedAt < b.startedAt ? -1 : Number(a.startedAt > b.startedAt)))
    .map((set) => {
      const link = links.get(set.id) ?? null;
      const day = link?.day ?? localTime({ nowMs: Date.parse(set.startedAt), timeZone }).day;
      return { set, link, origin: originOf(set, link), day };
    });
}

/** The sets counted by hand or by a beat, in the order of the diary. */
export const handSetsOf = (diary: readonly DiaryEntry[]): readonly HandSet[] =>
  diary.filter((entry) => entry.kind === 'hand-set');
