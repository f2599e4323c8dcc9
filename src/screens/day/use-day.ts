import { useCallback, useEffect, useState } from 'react';
import type { DoseLog } from '../../dose/dose-log.ts';
import { localTime } from '../../dose/local-time.ts';
import { type Today, today } from '../../dose/today.ts';
import type { DiaryEntry } from '../../record/diary-entry.ts';
import { fail } from '../../result.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { gateNow } from '../../symptoms/gate-now.ts';
import type { MayExercise } from '../../symptoms/may-exercise.ts';
import { type QuestionsReason, questionsDue } from '../../symptoms/questions-due.ts';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { type Look, lookNow } from './look.ts';

/** How often the day is looked at anew: a set that had to wait becomes due. */
const TICK_MS = 20_000;

export interface DayInUse {
  /** Today on the person's calendar. */
  readonly day: CalendarDay;
  /** When it was last looked at. */
  readonly look: Look;
  /** Null while it is read, and when it can't be. */
  readonly log: DoseLog | null;
  /** Null without a prescription, too. */
  readonly today: Today | null;
  /** Whether sets may be started; null while it is not known. */
  readonly gate: MayExercise | null;
  /** Why the red-flag questions come before the next set, with a plan or without; empty: they need not, or it is not known. */
  readonly questions: readonly QuestionsReason[];
  readonly problem: Problem | null;
  /**
   * Adds entries, all or none, and looks again.
   * @param fits whether they still fit what is stored now, which another tab may have changed; left out: they always do
   * @returns whether they are on the disk
   */
  readonly add: (entries: readonly DiaryEntry[], fits?: (now: DoseLog) => boolean) => Promise<boolean>;
  /** Reads everything again. */
  readonly reload: () => void;
}

/** The diary and what it makes of today. */
export function useDay(): DayInUse {
  const { diary } = useServices();
  const [log, setLog] = useState<DoseLog | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [look, setLook] = useState(lookNow);
  const [reads, setReads] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `reads` counts the wishes to read again.
  useEffect(() => {
    let wanted = true;
    diary.log().then((read) => {
      if (!wanted) return;
      setLook(lookNow());
      if (read.ok) setLog(read.value);
      else setProblem(read.error);
    });
    return () => {
      wanted = false;
    };
  }, [diary, reads]);
  useEffect(() => {
    const timer = setInterval(() => setLook(lookNow()), TICK_MS);
    return () => clearInterval(timer);
  }, []);
  const reload = useCallback(() => setReads((n) => n + 1), []);
  const add = useCallback(
    async (entries: readonly DiaryEntry[], fits?: (now: DoseLog) => boolean) => {
      const now = fits ? await diary.log() : null;
      const isOld = now?.ok && fits && !fits(now.value);
      const added = isOld ? fail<Problem>({ kind: 'changed-elsewhere' }) : await diary.add(entries);
      setProblem(added.ok ? null : added.error);
      if (added.ok) reload();
      return added.ok;
    },
    [diary, reload],
  );
  const { day } = localTime(look.clock);
  return {
    day,
    look,
    log,
    today: log && today(log, look.clock, look.rested),
    gate: log && gateNow(log, day),
    questions: log ? questionsDue(log, day) : [],
    problem,
    add,
    reload,
  };
}
