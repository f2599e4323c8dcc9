import type { DoseLog } from '../dose/dose-log.ts';
import type { Result } from '../result.ts';
import type { CalendarDay } from '../symptoms/calendar-day.ts';
import type { DiaryEntry } from './diary-entry.ts';
import type { RemovedAt } from './remove-set.ts';
import type { StoreError } from './store-error.ts';

/** Why entries were not added or one was not removed. */
export type DiaryError =
  | StoreError
  /** There is another entry with this id. Entries never change, so one of the two is wrong. */
  | { readonly kind: 'entry-differs'; readonly id: string }
  | { readonly kind: 'entry-missing'; readonly id: string }
  /** Only sets counted by hand can be taken back; what was told about symptoms and safety stays. */
  | { readonly kind: 'entry-stays'; readonly id: string };

/** What can't be read. It stays as it is. */
export interface Damaged {
  readonly id: string;
  readonly what: string;
}

export interface DiaryPage {
  /** By the moment they were told, the oldest first. */
  readonly entries: readonly DiaryEntry[];
  readonly damaged: readonly Damaged[];
}

/** The diary on this machine. Every call is one transaction: it happened wholly or not at all. */
export interface DiaryStore {
  /**
   * Adds entries, all or none: the union by id, so that adding what is there already changes nothing.
   * @returns how many are new
   */
  readonly add: (entries: readonly DiaryEntry[]) => Promise<Result<number, DiaryError>>;
  /** The entries of the days from one to another, both included. */
  readonly read: (from: CalendarDay, to: CalendarDay) => Promise<Result<DiaryPage, StoreError>>;
  /** Every entry there is. */
  readonly all: () => Promise<Result<DiaryPage, StoreError>>;
  /**
   * All that decides about today and the next dose: the whole diary, and the measured sets of the days from `since` on.
   * @param timeZone IANA name; on which day a measured set was done when no link says so
   */
  readonly log: (
    since: CalendarDay,
    timeZone: string,
  ) => Promise<Result<{ readonly log: DoseLog; readonly damaged: readonly Damaged[] }, StoreError>>;
  /** Takes a set counted by hand back; an entry stays that says so. */
  readonly removeHandSet: (id: string, when: RemovedAt) => Promise<Result<void, DiaryError>>;
  /** Removes every example entry, and the measured sets that example links name. @returns how many entries */
  readonly removeExamples: () => Promise<Result<number, StoreError>>;
}
