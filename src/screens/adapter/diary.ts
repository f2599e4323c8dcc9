import { localTime } from '../../dose/local-time.ts';
import type { DiaryError } from '../../record/diary-store.ts';
import type { PersonStore } from '../../record/store.ts';
import type { StoreError } from '../../record/store-error.ts';
import { fail, ok, type Result } from '../../result.ts';
import { addDays } from '../../symptoms/calendar-day.ts';
import { clockNow } from '../parts/clock-now.ts';
import type { DiaryServices, Problem } from '../services.ts';
import { problemOf } from './problem-of.ts';

/** How many days of measured sets the day looks back on. Chosen: what progress shows, eight weeks. */
const DAYS_BACK = 56;

/** Entries that contradict one another are a fault of the program: their ids are random. */
const problemOfDiary = (error: DiaryError): Problem =>
  error.kind === 'entry-differs' || error.kind === 'entry-missing' || error.kind === 'entry-stays'
    ? { kind: 'unexpected', detail: `${error.kind} ${error.id}` }
    : problemOf(error);

/** The diary as the screens ask for it. */
export function diaryServices(opening: Promise<Result<PersonStore, StoreError>>): DiaryServices {
  return {
    async log(days = DAYS_BACK) {
      const store = await opening;
      if (!store.ok) return fail(problemOf(store.error));
      const clock = clockNow();
      const read = await store.value.diary.log(addDays(localTime(clock).day, -days), clock.timeZone);
      return read.ok ? ok(read.value.log) : fail(problemOf(read.error));
    },
    async add(entries) {
      const store = await opening;
      if (!store.ok) return fail(problemOf(store.error));
      const added = await store.value.diary.add(entries);
      return added.ok ? ok(null) : fail(problemOfDiary(added.error));
    },
    async removeExamples() {
      const store = await opening;
      if (!store.ok) return fail(problemOf(store.error));
      const removed = await store.value.diary.removeExamples();
      return removed.ok ? ok(null) : fail(problemOf(removed.error));
    },
  };
}
