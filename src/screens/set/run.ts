import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Frame } from '../../capture/frame.ts';
import type { LiveView, SetEvent } from '../../measure/live-view.ts';
import { unseenOf } from '../../measure/unseen-of.ts';
import { fail } from '../../result.ts';
import type { Ms } from '../../units.ts';
import type { AppServices, Problem, ProblemKind, RunningSet, SetHooks, SetPlan } from '../services.ts';
import type { Words } from '../words/words.ts';
import { type AdviceVoice, hearAdvice } from './advice-voice.ts';
import { announcementOf, type Heard } from './announcement.ts';
import { seesHand, stickersOfPlan } from './by-stickers.ts';
import { isCaptioned, isCaptionOver } from './caption-time.ts';
import { isNoteOver } from './glide-note.ts';
import { hasKeys } from './has-keys.ts';
import { hearHeld, NOT_HELD } from './held-voice.ts';
import { NO_RATE, seePicture } from './picture-rate.ts';
import { IDLE, type Moment, NO_MOMENT, type RunState } from './run-state.ts';
import { signalOf } from './signal.ts';
import type { Sounds } from './sounds.ts';
import { stageOf } from './stage.ts';
import { troubleOf, troubleSays } from './store-trouble.ts';
import { hearUnseen, type UnseenStands } from './unseen-shown.ts';
import type { VoiceRank } from './voice.ts';

/** Draws a frame while it is there; the frame is not the painter's to keep. */
export type Painter = (frame: Frame) => void;

export interface Run {
  readonly state: StoreApi<RunState>;
  readonly moment: StoreApi<Moment>;
  /** Begins a set, ending one that still runs. To be called from a click, which lets the page sound. */
  readonly begin: (plan: SetPlan) => void;
  /** Ends the set; what was measured is kept. */
  readonly stop: () => void;
  /** Takes the one announced signal: notes where symptoms begin, once in a set that asks for it, or ends the set, of glides because symptoms rise. */
  readonly signal: () => void;
  /** Tries now to have pictures again, while there are none. */
  readonly goOn: () => void;
  /** Stops and forgets the set, as when its screen is left. */
  readonly leave: () => void;
  /** @returns the end of the painting */
  readonly paintWith: (painter: Painter) => () => void;
}

export interface RunNeeds {
  readonly services: Pick<AppServices, 'runSet'>;
  /** In the language of the moment. */
  readonly words: () => Words;
  readonly sounds: Sounds;
  readonly now: () => Ms;
  /** Hears of a fault of the program, which the person is told of in general words. */
  readonly onFault: (cause: unknown) => void;
}

/** How long it is shown that there was a break, ms. Chosen: the time to come nearer and read it. */
const BREAK_STANDS_MS = 15_000;

/** The one set that may run at a time: its state for the screens, its sounds, its end. */
export function createRun({ services, words, sounds, now, onFault }: RunNeeds): Run {
  const state = createStore<RunState>(() => IDLE);
  const moment = createStore<Moment>(() => NO_MOMENT);
  let painter: Painter | null = null;
  let running: RunningSet | null = null;

  const say = (text: string | null, rank?: VoiceRank) => {
    sounds.say(text, rank);
    if (text !== null && isCaptioned(text)) state.setState({ caption: { text, sinceMs: now() } });
  };

  const leave = () => {
    if (running) {
      running.stop();
      sounds.hush();
    }
    running = null;
    state.setState(IDLE, true);
    moment.setState(NO_MOMENT, true);
  };

  const stop = () => {
    if (!running) return;
    // Nothing has been looked at yet, so there is nothing to finish.
    if (state.getState().stage === 'opening') return leave();
    state.setState({ stage: 'ended', advice: null, away: null });
    running.stop();
  };

  const signal = () => {
    const { plan, stage, onsetMarked } = state.getState();
    if (!running || !plan) return;
    const meant = signalOf(plan, stage, onsetMarked);
    if (meant === 'stop') return stop();
    running.markOnset();
    if (meant === 'symptoms') {
      // Ended here, too: not even one more picture is waited for.
      tellEnd('symptoms', state.getState().count);
      running.stop();
      return;
    }
    state.setState({ onsetMarked: true });
    say(`${words().set.onsetVoice} ${words().set.signalVoice.stop(seesHand(plan), hasKeys())}`);
  };

  /** A hand in a film says nothing now. */
  const hearHand = () => {
    const { plan, stage, onsetMarked } = state.getState();
    if (plan?.pictures.kind !== 'camera') return;
    if (signalOf(plan, stage, onsetMarked) === 'stop') say(words().set.handStopVoice);
    signal();
  };

  const tell = (event: SetEvent, counted: number) => {
    const announced = announcementOf(event, heardWith(counted), words().set);
    sounds.play(announced.tone);
    say(announced.say, announced.rank);
  };

  const tellEnd = (why: NonNullable<RunState['endedWhy']>, counted: number) => {
    if (state.getState().endedWhy !== null) return;
    state.setState({ stage: 'ended', endedWhy: why, advice: null, glideNote: null });
    tell({ kind: 'ended', why }, counted);
  };

  const heardWith = (counted: number): Heard => {
    const { plan } = state.getState();
    return {
      counted,
      target: plan?.targetReps ?? null,
      signal: plan ? signalOf(plan, 'ready', state.getState().onsetMarked) : 'stop',
      camera: plan !== null && seesHand(plan),
      keys: hasKeys(),
      stickers: plan !== null && stickersOfPlan(plan) !== null,
      unseen: unseenOf(moment.getState().stickers),
    };
  };

  /** Hooks of one set; they fall silent once another has begun. */
  function hooksOf(isCurrent: () => boolean): SetHooks {
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
        painter?.(frame);
        moment.setState({ tMs: frame.tMs });
      }),
      onView: whileCurrent(showView),
      onEvent: whileCurrent(hear),
      onStoreTrouble: whileCurrent(hearTrouble),
    };
  }

  return {
    state,
    moment,
    leave,
    begin(plan) {
      leave();
      sounds.unlock();
      state.setState({ ...IDLE, stage: 'opening', plan }, true);
      let mine: RunningSet | null = null;
      // Hooks may be called before `runSet` returns; until then the set is the current one.
      const isCurrent = () => mine === null || running === mine;
      mine = services.runSet(plan, hooksOf(isCurrent));
      running = mine;
      const end = (outcome: Awaited<RunningSet['done']>) => {
        if (!isCurrent()) return;
        running = null;
        if (!outcome.ok) state.setState({ stage: 'failed', problem: outcome.error });
        else if (outcome.value) state.setState({ stage: 'ended', finishedId: outcome.value.id });
        else state.setState(IDLE, true);
      };
      mine.done.then(end, (cause: unknown) => {
        end(fail({ kind: 'unexpected' }));
        onFault(cause);
      });
    },
    stop,
    signal,
    goOn: () => running?.goOn(),
    paintWith(next) {
      painter = next;
      return () => {
        if (painter === next) painter = null;
      };
    },
  };
}
