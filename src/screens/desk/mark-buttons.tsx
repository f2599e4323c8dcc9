import { useEffect, useRef } from 'react';
import { ANGLE_MARKS, type AngleMarkFor } from '../../symptoms/angle-mark.ts';
import { useWords } from '../words/words-context.tsx';

/** The key of each mark: the same place on every keyboard with letters. */
const KEYS: Readonly<Record<AngleMarkFor, string>> = { 'first-symptom': '1', limit: '2' };

interface MarkButtonsProps {
  readonly disabled: boolean;
  readonly onMark: (kind: AngleMarkFor) => void;
  /** What the last mark came to; read aloud. */
  readonly said: string;
}

/** The two marks, by button and by key from anywhere on the screen. */
export function MarkButtons({ disabled, onMark, said }: MarkButtonsProps) {
  const { desk } = useWords();
  const latest = useRef({ disabled, onMark });
  latest.current = { disabled, onMark };
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const kind = ANGLE_MARKS.find((each) => KEYS[each] === event.key);
      if (kind && !event.repeat && !latest.current.disabled) latest.current.onMark(kind);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
  return (
    <>
      {ANGLE_MARKS.map((kind) => (
        <button key={kind} type="button" className="button desk-mark" disabled={disabled} onClick={() => onMark(kind)}>
          {desk.mark[kind]}
          <span className="set-stop-keys">{desk.markKey(KEYS[kind])}</span>
        </button>
      ))}
      <p role="status" className="desk-said">
        {said}
      </p>
    </>
  );
}
