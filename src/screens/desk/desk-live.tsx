import { type ReactNode, useEffect, useRef, useState } from 'react';
import { followedError } from '../../compare/mark-error.ts';
import type { LegDrawing } from '../../measure/live-view.ts';
import type { AngleMarkFor } from '../../symptoms/angle-mark.ts';
import { type Deg, deg, type Ms } from '../../units.ts';
import { LiveSign } from '../parts/live-sign.tsx';
import type { SetPlan } from '../services.ts';
import { PhaseBanner } from '../set/phase-banner.tsx';
import { Picture } from '../set/picture.tsx';
import { LoadingProgress } from '../set/progress.tsx';
import { useRun, useRunState } from '../set/run-context.tsx';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { MarkButtons } from './mark-buttons.tsx';
import { type Reading, signOf } from './marks.ts';
import { StillMeasure } from './still-measure.tsx';
import { useFreeze } from './use-freeze.ts';

interface DeskLiveProps {
  readonly plan: SetPlan;
  /** A mark that is measured once the movement is over. */
  readonly onLiveMark: (kind: AngleMarkFor, tMs: Ms, liveDeg: Deg) => void;
  /** A mark on a frozen picture that has its angle already. */
  readonly onMark: (kind: AngleMarkFor, reading: Reading) => void;
  readonly children: ReactNode;
}

/** The leg with its angle while it moves, the buttons and keys that mark it, and the picture frozen when one is to be looked at. */
export function DeskLive({ plan, onLiveMark, onMark, children }: DeskLiveProps) {
  const { desk, set, locale } = useWords();
  const still = useStillWords();
  const run = useRun();
  const size = useRunState((s) => s.opened?.size ?? null);
  const opening = useRunState((s) => s.stage === 'opening');
  const ended = useRunState((s) => s.stage === 'ended');
  const [said, setSaid] = useState('');
  const [corrected, setCorrected] = useState<LegDrawing | null>(null);
  const number = useRef<HTMLParagraphElement>(null);
  const picture = useRef<HTMLDivElement>(null);
  const whole = new Intl.NumberFormat(locale, { maximumFractionDigits: 0 });
  const fromRest = () => {
    const { angleDeg, restDeg } = run.moment.getState();
    return angleDeg === null || restDeg === null ? null : deg(signOf(plan.exercise) * (angleDeg - restDeg));
  };
  // The first of the two that lie over each other is the picture, the second what is drawn on it.
  const { frozen, freeze, thaw } = useFreeze(() => picture.current?.querySelector('canvas') ?? null, fromRest);
  const errorAt = (tMs: Ms) => followedError(plan.exercise, [], tMs);
  const markLive = (kind: AngleMarkFor) => {
    const now = fromRest();
    setSaid(now === null ? desk.unseen : desk.marked(desk.mark[kind], whole.format(now)));
    if (now !== null) onLiveMark(kind, run.moment.getState().tMs, now);
  };
  const markFrozen = (kind: AngleMarkFor, reading: Reading) => {
    if (reading.method === 'followed' && frozen) onLiveMark(kind, frozen.tMs, reading.angleDeg);
    else onMark(kind, reading);
  };
  const latest = useRef({ fromRest, whole });
  latest.current = { fromRest, whole };
  useEffect(
    () =>
      run.moment.subscribe(() => {
        const now = latest.current.fromRest();
        if (number.current)
          number.current.textContent = now === null ? '–' : `${latest.current.whole.format(Math.round(now) + 0)}°`;
      }),
    [run],
  );
  const done = (
    <button type="button" className="button" data-look="main" disabled={ended} onClick={run.stop}>
      {desk.done}
    </button>
  );
  return (
    <>
      <div className="desk-live" hidden={frozen !== null}>
        <PhaseBanner />
        <div ref={picture} className="desk-live-picture">
          <Picture plan={plan} unlabelled />
        </div>
        {frozen ? null : (
          <div className="desk-marking">
            <div className="reading-shown">
              {/* Read aloud at every picture it would say nothing else: what was marked is announced instead. */}
              <p className="desk-angle numbers" ref={number}>
                –
              </p>
              <p className="numbers reading-error">
                {still.liveError(whole.format(Math.ceil(errorAt(run.moment.getState().tMs))))}
              </p>
            </div>
            <MarkButtons disabled={opening || ended} onMark={markLive} said={said} />
            <button type="button" className="button" disabled={opening || ended} onClick={freeze}>
              {still.freeze}
            </button>
            {children}
            {done}
            {opening ? <LoadingProgress /> : null}
          </div>
        )}
      </div>
      {frozen && size ? (
        <StillMeasure
          task={plan}
          image={frozen.image}
          size={size}
          seen={{ leg: frozen.leg, facing: null, turnDeg: null }}
          followed={
            frozen.liveDeg === null
              ? null
              : { angleDeg: frozen.liveDeg, zero: 'rest', errorDeg: errorAt(frozen.tMs), method: 'followed' }
          }
          corrected={corrected}
          onCorrect={setCorrected}
          onMark={markFrozen}
          below={
            <>
              {plan.pictures.kind === 'camera' && !ended ? <LiveSign>{set.cameraOn}</LiveSign> : null}
              <p className="soft">{still.frozenAbout}</p>
            </>
          }
        >
          <button
            type="button"
            className="button"
            onClick={() => {
              setCorrected(null);
              thaw();
            }}
          >
            {still.thaw}
          </button>
          {children}
          {done}
        </StillMeasure>
      ) : null}
    </>
  );
}
