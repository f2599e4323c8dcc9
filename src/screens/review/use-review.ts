import { useEffect, useState } from 'react';
import type { DoseLog } from '../../dose/dose-log.ts';
import { localTime } from '../../dose/local-time.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { clockNow } from '../parts/clock-now.ts';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { daysRead, firstDay, type Period } from './period.ts';

/** The diary over a period that ends today. */
export interface Reviewed {
  readonly period: Period;
  readonly log: DoseLog;
  readonly from: CalendarDay;
  readonly to: CalendarDay;
}

/** Reads the diary for a period; what was read last stays until the new one is here. Null before. */
export function useReview(period: Period): { readonly reviewed: Reviewed | null; readonly problem: Problem | null } {
  const { diary } = useServices();
  const [reviewed, setReviewed] = useState<Reviewed | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  useEffect(() => {
    let wanted = true;
    diary.log(daysRead(period)).then((read) => {
      if (!wanted) return;
      setProblem(read.ok ? null : read.error);
      if (!read.ok) return;
      const { day } = localTime(clockNow());
      setReviewed({ period, log: read.value, from: firstDay(period, read.value, day), to: day });
    });
    return () => {
      wanted = false;
    };
  }, [diary, period]);
  return { reviewed, problem };
}
