import { useEffect, useRef, useState } from 'react';
import { useSounds } from '../set/sounds-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { type Look, leftMs } from './look.ts';

/** A wait no longer than this is a rest between sets, and counted down; longer ones are a time of day. ms, chosen. */
const REST_MS = 10 * 60_000;

export const isRest = (mayStartMs: number | null, nowMs: number): boolean =>
  mayStartMs !== null && mayStartMs > nowMs && mayStartMs - nowMs <= REST_MS;

interface Rest {
  /** ms since 1970 on the wall clock of `look`. */
  readonly untilMs: number;
  readonly look: Look;
  readonly onOver: () => void;
}

/** Counts the rest before the next set down, whatever is done to the machine's clock; says when it is over. */
export function RestClock({ untilMs, look, onOver }: Rest) {
  const { day } = useWords();
  const sounds = useSounds();
  const [left, setLeft] = useState(() => leftMs(untilMs, look));
  const over = useRef(onOver);
  over.current = onOver;
  useEffect(() => {
    const timer = setInterval(() => {
      const now = leftMs(untilMs, look);
      setLeft(now);
      if (now > 0) return;
      clearInterval(timer);
      sounds.play('rested');
      sounds.say(day.rested);
      over.current();
    }, 250);
    return () => clearInterval(timer);
  }, [untilMs, look, sounds, day]);
  const seconds = Math.max(0, Math.ceil(left / 1000));
  const clock = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
  // A clock read aloud every second would say nothing else; its end is announced.
  return (
    <p className="day-glance rest-clock numbers" role="timer" aria-live="off">
      {day.resting(clock)}
    </p>
  );
}
