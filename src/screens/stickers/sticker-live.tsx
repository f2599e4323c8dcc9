import { type RefObject, useRef } from 'react';
import { Link, useLocation } from 'wouter';
import { useStore } from 'zustand';
import { Icon, type IconName } from '../parts/icon.tsx';
import type { Problem, SetPlan } from '../services.ts';
import { useRun } from '../set/run-context.tsx';
import { problemSays } from '../set/sticker-problem.ts';
import { useStickerWords } from '../words/sticker-catalogues.ts';
import { type CheckState, STICKER_CHECKS } from '../words/sticker-words.ts';
import { useWords } from '../words/words-context.tsx';
import { BeginButtons } from './begin-buttons.tsx';
import { FilmSteps } from './film-steps.tsx';
import { jointOf } from './joint-of.ts';
import type { SetUp, SetUpState } from './set-up-state.ts';
import { StickerAdvice } from './sticker-advice.tsx';
import { StickerPicture } from './sticker-picture.tsx';
import { StickerPlan } from './sticker-plan.tsx';
import { useHandsFree } from './use-hands-free.ts';

const SIGNS: Readonly<Record<CheckState, IconName>> = { good: 'check', bad: 'warning', unknown: 'wait' };

const LOOKS = { refused: 'warning', good: 'check', asks: 'search' } as const;

/** The one sentence that matters now. */
function useSentence({ names }: SetUp, { mode, tapped, start, refusal, checks, unseen, durationMs }: SetUpState): string {
  const words = useStickerWords();
  const { set } = useWords();
  if (start && checks.seen === 'bad') return set.unseen[unseen ?? 'lost'];
  if (refusal && (start || mode === 'find')) return words.refusals[refusal];
  if (start && durationMs !== null) return words.film.found;
  if (start) return mode === 'find' ? words.found : words.tapped;
  if (mode === 'find') return words.searching;
  const next = names.find((n) => !tapped[n]) ?? names[0];
  const say = mode === 'skin' ? words.skinNext : words.tapNext;
  const asked = say((next && words.names[next]) ?? '', Math.min(names.length, Object.keys(tapped).length + 1));
  return refusal ? `${words.refusals[refusal]} ${asked}` : asked;
}

function Checks({ state, live }: { readonly state: SetUpState; readonly live: boolean }) {
  const words = useStickerWords();
  // A picture that stands still shows no foot that moves.
  const shown = STICKER_CHECKS.filter((check) => live || check !== 'still');
  return (
    <ul className="sticker-checks">
      {shown.map((check) => (
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

/** Why nothing is seen, and the ways on from there. */
function Failed({ plan, problem, onAgain }: Pick<LiveProps, 'plan' | 'onAgain'> & { readonly problem: Problem }) {
  const all = useWords();
  const { set, day } = all;
  const { film } = useStickerWords();
  const { title, todo } = problemSays(problem, true, all);
  const byHand = plan.line ? `/by-hand/${plan.line.itemId}/${plan.side}` : `/count/${plan.exercise}/${plan.side}`;
  return (
    <div className="sticker-problem" role="alert">
      <p>
        <strong>{title}</strong> {todo}
      </p>
      <button type="button" className="button" data-look="main" onClick={onAgain}>
        {set.tryAgain}
      </button>
      {plan.pictures.kind === 'file' ? (
        <Link href="/choose/file" className="button">
          {film.other}
        </Link>
      ) : (
        <Link href={byHand} className="button">
          {day.go.byHand}
        </Link>
      )}
    </div>
  );
}

/** The picture with what was found in it, what is wrong with it, and the way into the set. */
export function StickerLive({ plan, setUp, canvas, onAgain }: LiveProps) {
  const words = useStickerWords();
  const run = useRun();
  const [, navigate] = useLocation();
  const state = useStore(setUp.state);
  const sentence = useSentence(setUp, state);
  const joint = jointOf(plan.exercise);
  const live = plan.pictures.kind !== 'file';
  const begun = useRef(false);
  const begin = () => {
    const ready = begun.current ? null : setUp.ready();
    if (!ready) return;
    begun.current = true;
    setUp.stop();
    run.begin(ready);
    navigate('/run', { replace: true });
  };
  const bad = state.refusal !== null || (state.start !== null && state.checks.seen === 'bad');
  const look = bad ? 'refused' : state.start ? 'good' : 'asks';
  const handsFree = useHandsFree(setUp, live, begin);
  if (state.problem) return <Failed plan={plan} problem={state.problem} onAgain={onAgain} />;
  return (
    <div className="sticker-parts">
      <div className="sticker-shown">
        <StickerPicture setUp={setUp} canvas={canvas} live={live} />
        {live ? null : <FilmSteps setUp={setUp} />}
      </div>
      <div className="sticker-panel">
        <p className="sticker-sentence" role="status" data-look={look}>
          <Icon name={LOOKS[look]} size={32} />
          {sentence}
        </p>
        <Checks state={state} live={live} />
        <BeginButtons
          enabled={state.start !== null && state.checks.seen === 'good'}
          handsFree={live ? handsFree : null}
          onBegin={begin}
        />
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
