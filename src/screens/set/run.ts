import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Frame } from '../../capture/frame.ts';
import type { LegDrawing, LiveGlide, LiveView, SetEvent, ViewAdvice } from '../../measure/live-view.ts';
import type { StickersSeen } from '../../measure/stickers-seen.ts';
import type { GlideCycle } from '../../reps/glide-coordination.ts';
import { fail } from '../../result.ts';
import { type Deg, type Ms, ms, type Ratio, ratio } from '../../units.ts';
import type { AppServices, OpenedPictures, Problem, RunningSet, SetHooks, SetPlan } from '../services.ts';
import type { Words } from '../words/words.ts';
import { type AdviceVoice, hearAdvice } from './advice-voice.ts';
import { announcementOf, type Heard } from './announcement.ts';
import { seesHand, stickersOfPlan } from './by-stickers.ts';
import { type Caption, isCaptioned, isCaptionOver } from './caption-time.ts';
import { type GlideNote, isNoteOver } from './glide-note.ts';
import { hearHeld, NOT_HELD } from './held-voice.ts';
import { signalOf } from './signal.ts';
import type { Sounds } from './sounds.ts';
import { type Stage, stageOf } from './stage.ts';
import type { VoiceRank } from './voice.ts';

/** What the set's screen shows and seldom changes. */
export interface RunState {
  readonly stage: Stage;
  readonly plan: SetPlan | null;
  readonly loaded: Ratio;
  readonly opened: OpenedPictures | null;
  readonly count: number;
  readonly partialCount: number;
  /** The most urgent one. */
  readonly advice: ViewAdvice | null;
  readonly endedWhy: Extract<SetEvent, { kind: 'ended' }>['why'] | null;
  /** Lost, because something else was taken for a sticker. */
  readonly mixedUp: boolean;
  /** The person has said where symptoms begin. */
  readonly onsetMarked: boolean;
  /** The last repetition went past it. */
  readonly pastOnset: boolean;
  /** Nerve glides: what each cycle was, as far as can be told live, oldest first. */
  readonly glideCycles: readonly GlideCycle[];
  /** What was last to be said of them; null: nothing, or not lately. */
  readonly glideNote: GlideNote | null;
  /** What was last said, while it is to be read; also where the sound is off. */
  readonly caption: Caption | null;
  /** A repetition waits for the disk. */
  readonly storeTrouble: boolean;
  readonly problem: Problem | null;
  /** The stored set, once it is over. */
  readonly finishedId: string | null;
}

/** What changes with every frame; painted by subscribers, never through React state. */
export interface Moment {
  /** Time of the newest frame, from the source's first. */
  readonly tMs: Ms;
  readonly angleDeg: Deg | null;
  readonly leg: LegDrawing | null;
  /** Of a set by stickers: where they are; null when none is seen. */
  readonly stickers: StickersSeen | null;
  /** The angle at rest; null while nothing is counted. */
  readonly restDeg: Deg | null;
  /** Where symptoms were told to begin; null: they were not, or the angle is not known. */
  readonly onsetDeg: Deg | null;
  /** For how long the movement under way has been held; null: none is. */
  readonly heldMs: Ms | null;
  /** Null for other exercises than nerve glides. */
  readonly glide: LiveGlide | null;
}

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

const IDLE: RunState = {
  stage: 'idle',
  plan: null,
  loaded: ratio(0),
  opened: null,
  count: 0,
  partialCount: 0,
  advice: null,
  endedWhy: null,
  mixedUp: false,
  onsetMarked: false,
  pastOnset: false,
  glideCycles: [],
  glideNote: null,
  caption: null,
  storeTrouble: false,
  problem: null,
  finishedId: null,
};
const NO_MOMENT: Moment = {
  tMs: ms(0),
  angleDeg: null,
  leg: null,
  stickers: null,
  restDeg: null,
  onsetDeg: null,
  heldMs: null,
  glide: null,
};

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
    state.setState({ stage: 'ended', advice: null });
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
    say(`${words().set.onsetVoice} ${words().set.signalVoice.stop(seesHand(plan))}`);
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
      stickers: plan !== null && stickersOfPlan(plan) !== null,
    };
  };

  /** Hooks of one set; they fall silent once another has begun. */
  function hooksOf(isCurrent: () => boolean): SetHooks {
    let counted = 0;
    let adviceVoice: AdviceVoice | null = null;
    let heldVoice = NOT_HELD;
    const whileCurrent =
      <T>(hook: (value: T) => void) =>
      (value: T) => {
        if (isCurrent()) hook(value);
      };
    const showView = (view: LiveView) => {
      const { angleDeg, leg, stickers = null, restDeg, onsetDeg, heldMs, glide } = view;
      moment.setState({ angleDeg, leg, stickers, restDeg, onsetDeg, heldMs, glide });
      hearHold(view.heldMs);
      const advice = view.phase === 'setting-up' ? (view.advice[0] ?? null) : null;
      const heard = hearAdvice(adviceVoice, advice, now());
      adviceVoice = heard.state;
      if (heard.say) say(words().set.advice[heard.say]);
      const stage = stageOf(view);
      const mixedUp = stage === 'lost' && stickers?.implausible === true;
      const shown = state.getState();
      if (shown.stage === 'ended') return;
      if (shown.caption && isCaptionOver(shown.caption, now())) state.setState({ caption: null });
      if (shown.glideNote && isNoteOver(shown.glideNote, now())) state.setState({ glideNote: null });
      const same =
        shown.stage === stage &&
        shown.advice === advice &&
        shown.mixedUp === mixedUp &&
        shown.count === view.count &&
        shown.partialCount === view.partialCount;
      if (!same) state.setState({ stage, advice, mixedUp, count: view.count, partialCount: view.partialCount });
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
      if (event.kind === 'rep') state.setState({ storeTrouble: false, pastOnset: event.rep.flags.includes('past-onset') });
      if (event.kind === 'hand') return hearHand();
      if (event.kind === 'ended') return tellEnd(event.why, counted);
      if (event.kind === 'glide') state.setState(({ glideCycles }) => ({ glideCycles: [...glideCycles, event.cycle] }));
      const what = event.kind === 'glide-wrong' ? 'wrong' : event.kind === 'glide-trouble' ? event.what : null;
      if (what) state.setState({ glideNote: { what, sinceMs: now() } });
      tell(event, counted);
    };
    return {
      onLoading: whileCurrent((loaded) => state.setState({ loaded })),
      onOpened: whileCurrent((opened) => state.setState({ opened })),
      onFrame: whileCurrent((frame) => {
        painter?.(frame);
        moment.setState({ tMs: frame.tMs });
      }),
      onView: whileCurrent(showView),
      onEvent: whileCurrent(hear),
      onStoreTrouble: whileCurrent(() => state.setState({ storeTrouble: true })),
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
    paintWith(next) {
      painter = next;
      return () => {
        if (painter === next) painter = null;
      };
    },
  };
}
