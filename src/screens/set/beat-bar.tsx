import { useEffect, useRef } from 'react';
import { type Beat, outAt } from '../../dose/pace.ts';
import { useWords } from '../words/words-context.tsx';
import './beat-bar.css';
import { useSounds } from './sounds-context.tsx';
import type { RunningPace } from './use-pace.ts';

const TONE = { out: 'up', hold: null, back: 'down' } as const satisfies Record<Beat, 'up' | 'down' | null>;

/** The beat to move to: a word, a bar that fills on the way out and empties on the way back, a short tone for each. */
export function BeatBar({ pace }: { readonly pace: RunningPace }) {
  const { set } = useWords();
  const sounds = useSounds();
  const { moment, now } = pace;
  const fill = useRef<HTMLSpanElement>(null);
  const look = useRef(now);
  look.current = now;
  const beat = moment?.beat ?? null;
  useEffect(() => {
    if (beat) sounds.play(TONE[beat]);
  }, [beat, sounds]);
  useEffect(() => {
    let asked = requestAnimationFrame(function paint() {
      const at = look.current();
      if (fill.current) fill.current.style.inlineSize = `${at ? 100 * outAt(at) : 0}%`;
      asked = requestAnimationFrame(paint);
    });
    return () => cancelAnimationFrame(asked);
  }, []);
  return (
    <div className="beat" data-beat={beat ?? 'none'}>
      {/* Heard as tones; read aloud it would cover the count. */}
      <span className="beat-word">{beat ? set.beat[beat] : set.beatWaits}</span>
      <span className="beat-way" aria-hidden="true">
        <span ref={fill} />
      </span>
    </div>
  );
}
