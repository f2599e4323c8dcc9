import { useEffect, useRef, useState } from 'react';
import { useSounds } from '../set/sounds-context.tsx';
import { useWords } from '../words/words-context.tsx';

/** A wait no longer than this is a rest between sets, and counted down; longer ones are a time of day. ms, chosen. */
const REST_MS = 10 * 60_000;

export const isRest = (mayStartMs: number | null, nowMs: number): boolean =>
  mayStartMs !== null && mayStartMs > nowMs && mayStartMs - nowMs <= REST_MS;

/** Counts the rest before the next set down; says when it is over. */
export function RestClock({ untilMs, onOver }: { readonly untilMs: number; readonly onOver: () => void }) {
  const { day } = useWords();
  const sounds = useSounds();
  const [leftMs, setLeftMs] = useState(untilMs - Date.now());
  const over = useRef(onOver);
  over.current = onOver;
  useEffect(() => {
    const timer = setInterval(() => {
      const left = untilMs - Date.now();
      setLeftMs(left);
      if (left > 0) return;
      clearInterval(timer);
      sounds.play('rested');
      sounds.say(day.rested);
      over.current();
    }, 250);
    return () => clearInterval(timer);
  }, [untilMs, sounds, day]);
  const seconds = Math.max(0, Math.ceil(leftMs / 1000));
  const clock = `${Math.floor(seconds / 60)}:${String(seconds % 60).padStart(2, '0')}`;
  // A clock read aloud every second would say nothing else; its end is announced.
  return (
    <p className="day-glance rest-clock numbers" role="timer" aria-live="off">
      {day.resting(clock)}
    </p>
  );
}
