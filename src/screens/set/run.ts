import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Frame } from '../../capture/frame.ts';
import type { SetEvent } from '../../measure/live-view.ts';
import { unseenOf } from '../../measure/unseen-of.ts';
import { fail } from '../../result.ts';
import type { Ms } from '../../units.ts';
import type { AppServices, RunningSet, SetPlan } from '../services.ts';
import type { Words } from '../words/words.ts';
import { announcementOf, type Heard } from './announcement.ts';
import { seesHand, stickersOfPlan } from './by-stickers.ts';
import { isCaptioned } from './caption-time.ts';
import { hasKeys } from './has-keys.ts';
import { IDLE, type Moment, NO_MOMENT, type RunState } from './run-state.ts';
import { setHooks } from './set-hooks.ts';
import { signalOf } from './signal.ts';
import type { Sounds } from './sounds.ts';
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

  const paint = (frame: Frame) => painter?.(frame);
  const shown = { state, moment, words, sounds, now, paint, say, tell, tellEnd, hearHand };

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
      mine = services.runSet(plan, setHooks(shown, isCurrent));
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
