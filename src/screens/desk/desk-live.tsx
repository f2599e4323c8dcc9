import { useEffect, useRef, useState } from 'react';
import { exerciseOf } from '../../exercises/catalogue.ts';
import { deg } from '../../units.ts';
import type { SetPlan } from '../services.ts';
import { PhaseBanner } from '../set/phase-banner.tsx';
import { Picture } from '../set/picture.tsx';
import { LoadingProgress } from '../set/progress.tsx';
import { useRun, useRunState } from '../set/run-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { type LiveMark, MARK_KINDS, type MarkKind } from './marks.ts';

/** The key of each mark: the same place on every keyboard with letters. */
const KEYS: Readonly<Record<MarkKind, string>> = { symptom: '1', limit: '2' };

interface DeskLiveProps {
  readonly plan: SetPlan;
  readonly marks: readonly LiveMark[];
  readonly onMark: (mark: LiveMark) => void;
}

/** The leg with its angle while it moves, and the buttons and keys that mark it. */
export function DeskLive({ plan, marks, onMark }: DeskLiveProps) {
  const { desk, locale } = useWords();
  const run = useRun();
  const opening = useRunState((s) => s.stage === 'opening');
  const ended = useRunState((s) => s.stage === 'ended');
  const [unseen, setUnseen] = useState(false);
  const number = useRef<HTMLParagraphElement>(null);
  const whole = new Intl.NumberFormat(locale, { maximumFractionDigits: 0 });
  const sign = exerciseOf(plan.exercise).rule.direction === 'rises' ? 1 : -1;
  const fromRest = () => {
    const { angleDeg, restDeg } = run.moment.getState();
    return angleDeg === null || restDeg === null ? null : deg(sign * (angleDeg - restDeg));
  };
  const mark = (kind: MarkKind) => {
    const now = fromRest();
    setUnseen(now === null);
    if (now !== null) onMark({ kind, tMs: run.moment.getState().tMs, fromRestDeg: now });
  };
  const latest = useRef({ mark, fromRest, whole });
  latest.current = { mark, fromRest, whole };
  useEffect(
    () =>
      run.moment.subscribe(() => {
        const now = latest.current.fromRest();
        if (number.current)
          number.current.textContent = now === null ? '–' : `${latest.current.whole.format(Math.round(now) + 0)}°`;
      }),
    [run],
  );
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const kind = MARK_KINDS.find((each) => KEYS[each] === event.key);
      if (kind && !event.repeat) latest.current.mark(kind);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
  const last = marks.at(-1);
  return (
    <div className="desk-live">
      <PhaseBanner />
      <Picture plan={plan} />
      <div className="desk-marking">
        {/* Read aloud at every picture it would say nothing else: what was marked is announced instead. */}
        <p className="desk-angle numbers" ref={number}>
          –
        </p>
        {MARK_KINDS.map((kind) => (
          <button key={kind} type="button" className="button desk-mark" disabled={opening || ended} onClick={() => mark(kind)}>
            {desk.mark[kind]}
            <span className="set-stop-keys">{desk.markKey(KEYS[kind])}</span>
          </button>
        ))}
        <p role="status" className="desk-said">
          {unseen ? desk.unseen : last ? desk.marked(desk.mark[last.kind], whole.format(last.fromRestDeg)) : ''}
        </p>
        <button type="button" className="button" data-look="main" disabled={ended} onClick={run.stop}>
          {desk.done}
        </button>
        {opening ? <LoadingProgress /> : null}
      </div>
    </div>
  );
}
