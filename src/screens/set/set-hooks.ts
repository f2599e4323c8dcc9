import type { StoreApi } from 'zustand/vanilla';
import type { Frame } from '../../capture/frame.ts';
import type { LiveView, SetEvent } from '../../measure/live-view.ts';
import { unseenOf } from '../../measure/unseen-of.ts';
import type { Ms } from '../../units.ts';
import type { Problem, ProblemKind, SetHooks } from '../services.ts';
import type { Words } from '../words/words.ts';
import { type AdviceVoice, hearAdvice } from './advice-voice.ts';
import { isCaptionOver } from './caption-time.ts';
import { isNoteOver } from './glide-note.ts';
import { hearHeld, NOT_HELD } from './held-voice.ts';
import { NO_RATE, seePicture } from './picture-rate.ts';
import type { Moment, RunState } from './run-state.ts';
import type { Sounds } from './sounds.ts';
import { stageOf } from './stage.ts';
import { troubleOf, troubleSays } from './store-trouble.ts';
import { hearUnseen, type UnseenStands } from './unseen-shown.ts';
import type { VoiceRank } from './voice.ts';

/** How long it is shown that there was a break, ms. Chosen: the time to come nearer and read it. */
const BREAK_STANDS_MS = 15_000;

/** What a running set is shown and heard through. */
interface Shown {
  readonly state: StoreApi<RunState>;
  readonly moment: StoreApi<Moment>;
  readonly words: () => Words;
  readonly sounds: Sounds;
  readonly now: () => Ms;
  readonly paint: (frame: Frame) => void;
  /** Says a text, and writes it where it needs a caption. */
  readonly say: (text: string | null, rank?: VoiceRank) => void;
  readonly tell: (event: SetEvent, counted: number) => void;
  readonly tellEnd: (why: NonNullable<RunState['endedWhy']>, counted: number) => void;
  readonly hearHand: () => void;
}

/** What one set tells, put into state, picture and sound. @param isCurrent false: another set has begun, and this one falls silent */
export function setHooks(
  { state, moment, words, sounds, now, paint, say, tell, tellEnd, hearHand }: Shown,
  isCurrent: () => boolean,
): SetHooks {
  let counted = 0;
  let adviceVoice: AdviceVoice | null = null;
  let heldVoice = NOT_HELD;
  let unseenStands: UnseenStands | null = null;
  let rate = NO_RATE;
  let troubleTold = false;
  const whileCurrent =
    <T>(hook: (value: T) => void) =>
    (value: T) => {
      if (isCurrent()) hook(value);
    };
  const showView = (view: LiveView) => {
    rate = seePicture(rate, now());
    const live = state.getState().plan?.pictures.kind === 'camera';
    if (live && rate.few !== state.getState().fewPictures) state.setState({ fewPictures: rate.few });
    const { angleDeg, leg, stickers = null, restDeg, onsetDeg, heldMs, glide } = view;
    moment.setState({ angleDeg, leg, stickers, restDeg, onsetDeg, heldMs, glide });
    hearHold(view.heldMs);
    const advice = view.phase === 'setting-up' ? (view.advice[0] ?? null) : null;
    const heard = hearAdvice(adviceVoice, advice, now());
    adviceVoice = heard.state;
    if (heard.say) say(words().set.advice[heard.say]);
    const stage = stageOf(view);
    const mixedUp = stage === 'lost' && stickers?.implausible === true;
    const why = hearUnseen(unseenStands, unseenOf(stickers), now());
    unseenStands = why.state;
    const unseen = stage === 'lost' ? (why.state?.reason ?? null) : why.shown;
    const shown = state.getState();
    if (shown.stage === 'ended') return;
    if (shown.breakSinceMs !== null && now() - shown.breakSinceMs > BREAK_STANDS_MS) state.setState({ breakSinceMs: null });
    if (shown.caption && isCaptionOver(shown.caption, now())) state.setState({ caption: null });
    if (shown.glideNote && isNoteOver(shown.glideNote, now())) state.setState({ glideNote: null });
    const same =
      shown.stage === stage &&
      shown.advice === advice &&
      shown.mixedUp === mixedUp &&
      shown.unseen === unseen &&
      shown.count === view.count &&
      shown.partialCount === view.partialCount;
    if (!same) state.setState({ stage, advice, mixedUp, unseen, count: view.count, partialCount: view.partialCount });
  };
  const hearHold = (heldMs: Ms | null) => {
    const holdS = state.getState().plan?.guide.holdS ?? 0;
    const heard = hearHeld(heldVoice, heldMs, holdS);
    heldVoice = heard.state;
    sounds.play(heard.tone);
    if (heard.done) say(words().set.holdDoneVoice);
  };
  const hear = (event: SetEvent) => {
    if (event.kind === 'rep' && event.rep.complete) counted += 1;
    if (event.kind === 'rep') state.setState({ pastOnset: event.rep.flags.includes('past-onset') });
    if (event.kind === 'hand') return hearHand();
    if (event.kind === 'ended') return tellEnd(event.why, counted);
    if (event.kind === 'glide') state.setState(({ glideCycles }) => ({ glideCycles: [...glideCycles, event.cycle] }));
    const what = event.kind === 'glide-wrong' ? 'wrong' : event.kind === 'glide-trouble' ? event.what : null;
    if (what) state.setState({ glideNote: { what, sinceMs: now() } });
    tell(event, counted);
  };
  const showAway = (problem: Problem | null) => {
    const { away } = state.getState();
    if (away?.kind === problem?.kind || state.getState().stage === 'ended') return;
    state.setState({ away: problem });
    if (problem) sounds.play('lost');
    if (!problem) return say(words().away.backVoice);
    // What to do is told once, when it is known. It is written in place of the picture.
    const restarting = problem.kind === 'pose-failed';
    const { title, todo } = words().problems[problem.kind](problem.detail ?? '');
    sounds.say(`${title} ${restarting ? words().away.restarting : todo}`);
  };
  const showBreak = () => {
    state.setState({ breakSinceMs: now() });
    sounds.say(words().away.pause);
  };
  const hearTrouble = (kind: ProblemKind | null) => {
    const trouble = troubleOf(kind);
    state.setState({ storeTrouble: trouble });
    if (trouble === null || trouble === 'late' || troubleTold) return;
    troubleTold = true;
    // A count waits for it.
    say(troubleSays(trouble, words()), 'wrong');
  };
  return {
    onAway: whileCurrent(showAway),
    onBreak: () => whileCurrent(showBreak)(undefined),
    onScreenKept: whileCurrent((kept) => state.setState({ screenDims: !kept })),
    onLoading: whileCurrent((loaded) => state.setState({ loaded })),
    onOpened: whileCurrent((opened) => state.setState({ opened })),
    onFrame: whileCurrent((frame) => {
      paint(frame);
      moment.setState({ tMs: frame.tMs });
    }),
    onView: whileCurrent(showView),
    onEvent: whileCurrent(hear),
    onStoreTrouble: whileCurrent(hearTrouble),
  };
}
