import { useEffect, useRef } from 'react';
import type { MeasuredRep } from '../../measure/set-result.ts';
import type { Ms } from '../../units.ts';
import { Icon } from '../parts/icon.tsx';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import './film-bar.css';
import { type FilmFrame, frameNear } from './film.ts';

interface FilmBarProps {
  readonly frames: readonly FilmFrame[];
  /** Which picture is shown, from 0. */
  readonly at: number;
  /** The time of the picture that is shown; null before the first. */
  readonly shownMs: Ms | null;
  readonly reps: readonly MeasuredRep[];
  readonly onAt: (index: number) => void;
}

/** Through a film: scrubbing, picture by picture by button and by comma and full stop, and to the top of each movement. */
export function FilmBar({ frames, at, shownMs, reps, onAt }: FilmBarProps) {
  const { locale } = useWords();
  const still = useStillWords();
  const seconds = new Intl.NumberFormat(locale, { minimumFractionDigits: 3, maximumFractionDigits: 3 });
  const last = frames.length - 1;
  const to = (index: number) => onAt(Math.max(0, Math.min(last, index)));
  const latest = useRef({ to, at });
  latest.current = { to, at };
  useEffect(() => {
    const onKey = ({ key }: KeyboardEvent) => {
      const { to: go, at: now } = latest.current;
      if (key === ',') go(now - 1);
      if (key === '.') go(now + 1);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
  const where = still.position(seconds.format((shownMs ?? frames[at]?.tMs ?? 0) / 1000), at + 1, frames.length);
  return (
    <div className="film-bar">
      <div className="film-steps">
        <button type="button" className="button" disabled={at === 0} aria-label={still.previous} onClick={() => to(at - 1)}>
          <Icon name="forward" />
        </button>
        <input
          type="range"
          min={0}
          max={last}
          step={1}
          value={at}
          aria-label={still.scrub}
          aria-valuetext={where}
          onChange={(event) => to(Number(event.currentTarget.value))}
        />
        <button type="button" className="button" disabled={at === last} aria-label={still.next} onClick={() => to(at + 1)}>
          <Icon name="forward" />
        </button>
      </div>
      <p className="numbers film-where" data-shown-ms={shownMs ?? ''}>
        {where} <span className="soft small">{still.stepKeys}</span>
      </p>
      {reps.length > 0 ? (
        <div className="film-tops">
          <span aria-hidden="true">{still.tops}</span>
          {reps.map(({ number, peakMs }) => (
            <button
              key={number}
              type="button"
              className="button"
              aria-label={still.peak(number)}
              onClick={() => to(frameNear(frames, peakMs))}
            >
              {number}
            </button>
          ))}
        </div>
      ) : null}
    </div>
  );
}
