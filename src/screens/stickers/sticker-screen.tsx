import { type RefObject, useEffect, useRef, useState } from 'react';
import { Link, Redirect, useLocation } from 'wouter';
import { useStore } from 'zustand';
import { Icon, type IconName } from '../parts/icon.tsx';
import { Page } from '../parts/page.tsx';
import type { SetPlan } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { drawFrame } from '../set/draw-frame.ts';
import { useRun } from '../set/run-context.tsx';
import { useStickerWords } from '../words/sticker-catalogues.ts';
import { type CheckState, STICKER_CHECKS } from '../words/sticker-words.ts';
import { useWords } from '../words/words-context.tsx';
import { jointOf } from './joint-of.ts';
import { createSetUp, type SetUp, type SetUpState } from './set-up.ts';
import { StickerAdvice } from './sticker-advice.tsx';
import { StickerPicture } from './sticker-picture.tsx';
import { StickerPlan } from './sticker-plan.tsx';
import './sticker-screen.css';
import { useWaitingPlan } from './waiting-plan.ts';

const SIGNS: Readonly<Record<CheckState, IconName>> = { good: 'check', bad: 'warning', unknown: 'wait' };

/** The one sentence that matters now. */
function useSentence({ names }: SetUp, { mode, tapped, start, refusal }: SetUpState): string {
  const words = useStickerWords();
  if (refusal && (start || mode === 'find')) return words.refusals[refusal];
  if (start) return mode === 'find' ? words.found : words.tapped;
  if (mode === 'find') return words.searching;
  const next = names.find((n) => !tapped[n]) ?? names[0];
  const say = mode === 'skin' ? words.skinNext : words.tapNext;
  const asked = say((next && words.names[next]) ?? '', Math.min(names.length, Object.keys(tapped).length + 1));
  return refusal ? `${words.refusals[refusal]} ${asked}` : asked;
}

function Checks({ state }: { readonly state: SetUpState }) {
  const words = useStickerWords();
  return (
    <ul className="sticker-checks">
      {STICKER_CHECKS.map((check) => (
        <li key={check} data-state={state.checks[check]}>
          <Icon name={SIGNS[state.checks[check]]} />
          {words.checks[check][state.checks[check]]}
        </li>
      ))}
    </ul>
  );
}

/** Ways to show the stickers other than the one in use. */
function Ways({ setUp, mode, joint }: { readonly setUp: SetUp; readonly mode: SetUpState['mode']; readonly joint: string }) {
  const words = useStickerWords();
  return (
    <div className="sticker-ways">
      {mode === 'find' ? null : (
        <button type="button" className="button" onClick={() => setUp.choose(mode)}>
          {words.tapAgain}
        </button>
      )}
      {mode === 'find' ? null : (
        <button type="button" className="button" onClick={() => setUp.choose('find')}>
          {words.findAgain}
        </button>
      )}
      {mode === 'tap' ? null : (
        <button type="button" className="button" onClick={() => setUp.choose('tap')}>
          {words.tapMyself}
        </button>
      )}
      {mode === 'skin' || joint !== 'toe' ? null : (
        <button type="button" className="button" onClick={() => setUp.choose('skin')}>
          {words.onSkin}
        </button>
      )}
    </div>
  );
}

interface LiveProps {
  readonly plan: SetPlan;
  readonly setUp: SetUp;
  readonly canvas: RefObject<HTMLCanvasElement | null>;
  readonly onAgain: () => void;
}

function Live({ plan, setUp, canvas, onAgain }: LiveProps) {
  const words = useStickerWords();
  const { problems, set, day } = useWords();
  const run = useRun();
  const [, navigate] = useLocation();
  const state = useStore(setUp.state);
  const sentence = useSentence(setUp, state);
  const joint = jointOf(plan.exercise);
  const byHand = plan.line ? `/by-hand/${plan.line.itemId}/${plan.side}` : `/count/${plan.exercise}/${plan.side}`;
  if (state.problem) {
    const { title, todo } = problems[state.problem.kind](state.problem.detail ?? '');
    return (
      <div className="sticker-problem" role="alert">
        <p>
          <strong>{title}</strong> {todo}
        </p>
        <button type="button" className="button" data-look="main" onClick={onAgain}>
          {set.tryAgain}
        </button>
        <Link href={byHand} className="button">
          {day.go.byHand}
        </Link>
      </div>
    );
  }
  const begin = () => {
    const ready = setUp.ready();
    if (!ready) return;
    setUp.stop();
    run.begin(ready);
    navigate('/run', { replace: true });
  };
  return (
    <div className="sticker-parts">
      <StickerPicture setUp={setUp} canvas={canvas} />
      <div className="sticker-panel">
        <p className="sticker-sentence" role="status" data-look={state.refusal ? 'refused' : state.start ? 'good' : 'asks'}>
          <Icon name={state.refusal ? 'warning' : state.start ? 'check' : 'search'} size={32} />
          {sentence}
        </p>
        <Checks state={state} />
        <button
          type="button"
          className="button"
          data-look="main"
          disabled={!state.start || state.checks.seen !== 'good'}
          onClick={begin}
        >
          <Icon name="play" size={28} />
          {words.start}
        </button>
        <Ways setUp={setUp} mode={state.mode} joint={joint} />
        {state.mode === 'find' ? null : <p className="soft small">{words.tapKeys}</p>}
      </div>
      <section className="sticker-where" aria-labelledby="sticker-where-title">
        <StickerPlan joint={joint} side={plan.side} />
        <div>
          <h2 id="sticker-where-title">{words.placesTitle}</h2>
          <StickerAdvice joint={joint} />
        </div>
      </section>
    </div>
  );
}

function SettingUp({ plan }: { readonly plan: SetPlan }) {
  const words = useStickerWords();
  const services = useServices();
  const canvas = useRef<HTMLCanvasElement>(null);
  const [setUp, setSetUp] = useState<SetUp | null>(null);
  const [attempt, setAttempt] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `attempt` counts the wishes to try again.
  useEffect(() => {
    const made = createSetUp({
      services,
      plan,
      onFrame: (frame) => {
        if (canvas.current) drawFrame(canvas.current, frame);
      },
      wait: (forMs) => new Promise((done) => setTimeout(done, forMs)),
    });
    setSetUp(made);
    return made.stop;
  }, [services, plan, attempt]);
  const back = plan.line ? `/today/go/${plan.line.itemId}/${plan.side}` : '/choose/camera';
  return (
    <Page className="stickers" title={words.title} lead={words.lead[jointOf(plan.exercise)]} back={back}>
      {setUp ? <Live plan={plan} setUp={setUp} canvas={canvas} onAgain={() => setAttempt((n) => n + 1)} /> : null}
    </Page>
  );
}

/** Before a set by stickers: they are found or tapped in the live picture, and looked over. */
export function StickerScreen() {
  const plan = useWaitingPlan((s) => s.plan);
  // A page loaded anew has no set that waits.
  return plan ? <SettingUp plan={plan} /> : <Redirect to="/choose/camera" replace />;
}
