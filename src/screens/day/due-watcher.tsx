import { useEffect, useRef } from 'react';
import { localTime } from '../../dose/local-time.ts';
import { today } from '../../dose/today.ts';
import type { TodayLine } from '../../dose/today-line.ts';
import { useChoices } from '../choose/choices.ts';
import { limbsOf } from '../parts/limb-words.ts';
import { useServices } from '../services-context.tsx';
import { useRun } from '../set/run-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { lookNow } from './look.ts';
import { prescribedWords } from './prescribed-words.ts';

/** How often it is looked whether a set has become due, ms. Chosen: nobody misses a minute of hours. */
const LOOK_MS = 60_000;

const nameOf = ({ item, side }: TodayLine): string => `${item.id} ${side}`;

/** Tells by the browser's messages which sets have become due while the page is open, on whatever screen; not while a set runs. */
export function DueWatcher() {
  const words = useWords();
  const { diary, messages } = useServices();
  const run = useRun();
  const on = useChoices((s) => s.choices.messages);
  const latest = useRef(words);
  latest.current = words;
  useEffect(() => {
    if (!on || messages.state() !== 'granted') return;
    /** Lines that were waiting at the last look, and its day. */
    let waiting: { readonly day: string; readonly names: ReadonlySet<string> } | null = null;
    const look = async () => {
      const { clock, rested } = lookNow();
      const log = await diary.log();
      const seen = log.ok ? today(log.value, clock, rested) : null;
      if (!seen) return;
      const { day } = localTime(clock);
      const due = seen.lines.filter((line) => line.state === 'now' && waiting?.day === day && waiting.names.has(nameOf(line)));
      waiting = { day, names: new Set(seen.lines.filter(({ state }) => state === 'later').map(nameOf)) };
      if (due.length === 0 || run.state.getState().plan) return;
      const { day: said } = latest.current;
      messages.show(
        due
          .map(({ item, side }) =>
            said.doNow(
              prescribedWords(item.exercise, latest.current).plural,
              limbsOf(item.exercise, latest.current)[side].legLower,
            ),
          )
          .join(' '),
      );
    };
    void look();
    const timer = setInterval(() => void look(), LOOK_MS);
    return () => clearInterval(timer);
  }, [on, diary, messages, run]);
  return null;
}
