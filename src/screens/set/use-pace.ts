import { useEffect, useRef, useState } from 'react';
import { type Pace, type PaceMoment, paceAt } from '../../dose/pace.ts';
import { ms } from '../../units.ts';

/** How often the beat is looked at, ms. Chosen: a beat is heard no later than the eye sees it. */
const LOOK_MS = 40;

/** A beat that runs: its moment, told anew whenever repetition or beat change, and a function for the smooth share between. */
export interface RunningPace {
  readonly moment: PaceMoment | null;
  /** The moment now, for what is painted; null while it stands. */
  readonly now: () => PaceMoment | null;
}

/**
 * Beats at a pace while `runs`; a pause goes on with the repetition that was under way, from its start.
 * @param pace null: no beat; to be the same object for the same pace
 */
export function usePace(pace: Pace | null, runs: boolean): RunningPace {
  const [moment, setMoment] = useState<PaceMoment | null>(null);
  const startMs = useRef<number | null>(null);
  const repsBefore = useRef(0);
  useEffect(() => {
    if (!pace || !runs) return;
    startMs.current = performance.now();
    let last: PaceMoment | null = null;
    const look = () => {
      const at = paceAt(ms(performance.now() - (startMs.current ?? 0)), pace);
      const now = { ...at, rep: at.rep + repsBefore.current };
      if (last?.rep === now.rep && last.beat === now.beat) return;
      last = now;
      setMoment(now);
    };
    look();
    const timer = setInterval(look, LOOK_MS);
    return () => {
      clearInterval(timer);
      startMs.current = null;
      repsBefore.current = last ? last.rep - 1 : 0;
      setMoment(null);
    };
  }, [pace, runs]);
  const now = () => (pace && startMs.current !== null ? paceAt(ms(performance.now() - startMs.current), pace) : null);
  return { moment, now };
}
