import { createStore } from 'zustand/vanilla';
import type { Frame } from '../../capture/frame.ts';
import { exerciseOf } from '../../exercises/catalogue.ts';
import type { Observation } from '../../measure/observation.ts';
import { stickersOf } from '../../measure/sticker-angle.ts';
import type { StickersSeen } from '../../measure/stickers-seen.ts';
import { unseenOf } from '../../measure/unseen-of.ts';
import type { NamedStickers, StickerStart } from '../../run/sticker-start.ts';
import { toesSeenFromInside } from '../../stickers/arrange.ts';
import type { Spot } from '../../stickers/rgba-picture.ts';
import type { StickerName } from '../../stickers/sticker-name.ts';
import { type Ms, ms } from '../../units.ts';
import type { AppServices, SetPlan, StickerLook } from '../services.ts';
import type { CheckState, StickerCheck } from '../words/sticker-words.ts';
import { NOTHING_KNOWN, type Stillness, startStillness, stepChecks } from './checks.ts';
import type { Checks, SetUp, SetUpMode, SetUpState } from './set-up-state.ts';

interface SetUpNeeds {
  readonly services: Pick<AppServices, 'lookAtStickers'>;
  readonly plan: SetPlan;
  readonly onFrame: (frame: Frame) => void;
  readonly wait: (forMs: number) => Promise<void>;
}

/** Between two looks where nothing was found, ms. Chosen: the picture stays fluent. */
const AGAIN_MS = 400;
/** Found stickers that are not seen for so long are looked for anew, ms. Chosen: the foot was moved. */
const GONE_MS = 1500;
/** How often one of the stickers is looked at for glints, ms. Chosen: a lamp that is turned is noticed. */
const GLINT_MS = 1200;

/** Sets up stickers in a live picture, or in one of a film: finds or learns them, follows them, tells how well they are seen. */
export function createSetUp({ services, plan, onFrame, wait }: SetUpNeeds): SetUp {
  const { angle, rule } = exerciseOf(plan.exercise);
  const names = stickersOf(angle);
  const toes = angle === 'great-toe-extension' ? toesSeenFromInside(plan.side) : null;
  const state = createStore<SetUpState>(() => ({
    mode: 'find',
    size: null,
    durationMs: null,
    shownMs: ms(0),
    tapped: {},
    start: null,
    refusal: null,
    checks: NOTHING_KNOWN,
    unseen: null,
    problem: null,
  }));
  const seen = createStore<{ readonly stickers: StickersSeen | null }>(() => ({ stickers: null }));
  let learned: NamedStickers = {};
  let stillness: Stillness = startStillness(rule);
  let goneSince: Ms | null = null;
  let glintLookMs: Ms | null = null;
  let glints: CheckState = 'unknown';
  let turn = 0;
  /** Counts what was begun: an answer to an older question is none. */
  let round = 0;
  let stopped = false;

  const begin = async (start: StickerStart, asked: number): Promise<void> => {
    const look = await looking;
    await look.watch({ angle, start });
    if (asked !== round || stopped) return;
    stillness = startStillness(rule);
    goneSince = null;
    glintLookMs = null;
    glints = start.kind === 'skin' ? 'good' : 'unknown';
    state.setState({ start, refusal: null });
  };

  const search = async (): Promise<void> => {
    const asked = ++round;
    const look = await looking;
    while (asked === round && !stopped) {
      const found = await look.find(angle, { toes, colour: null });
      if (asked !== round || stopped) return;
      if (found.ok) return begin({ kind: 'stickers', named: found.value }, asked);
      state.setState({ refusal: found.error.kind });
      // A picture that stands still stays as it is.
      if (state.getState().durationMs !== null) return;
      await wait(AGAIN_MS);
    }
  };

  const lookForGlint = async (at: Spot): Promise<void> => {
    const asked = round;
    const look = await looking;
    const found = await look.learn(at);
    if (asked !== round || stopped) return;
    glints = !found.ok && found.error.kind === 'glare' ? 'bad' : 'good';
    state.setState({ refusal: glints === 'bad' ? 'glare' : null });
  };

  const watchGlints = ({ tMs, stickers }: Observation): void => {
    if (state.getState().start?.kind !== 'stickers') return;
    if (glintLookMs !== null && tMs - glintLookMs < GLINT_MS) return;
    glintLookMs = tMs;
    const at = stickers?.points[names[turn++ % names.length] as StickerName];
    if (at && !at.bridged) void lookForGlint(at);
  };

  const hear = (observation: Observation): void => {
    if (stopped || !state.getState().start) return;
    const { tMs, stickers = null } = observation;
    seen.setState({ stickers });
    const [next, looked] = stepChecks(stillness, observation, angle);
    stillness = next;
    const checks: Checks = { ...looked, glare: looked.seen === 'good' ? glints : 'unknown' };
    const { checks: before, unseen: unseenBefore } = state.getState();
    const unseen = unseenOf(stickers);
    if (
      unseen !== unseenBefore ||
      Object.keys(checks).some((name) => checks[name as StickerCheck] !== before[name as StickerCheck])
    )
      state.setState({ checks, unseen });
    watchGlints(observation);
    goneSince = checks.seen === 'good' ? null : (goneSince ?? tMs);
    if (goneSince !== null && tMs - goneSince > GONE_MS && state.getState().mode === 'find') choose('find');
  };

  const choose = (mode: SetUpMode): void => {
    round++;
    learned = {};
    seen.setState({ stickers: null });
    state.setState({ mode, tapped: {}, start: null, refusal: null, checks: NOTHING_KNOWN, unseen: null });
    if (mode === 'find') void search();
  };

  const tapSkin = async (tapped: SetUpState['tapped'], asked: number): Promise<void> => {
    const { tip, knuckle, arch } = tapped;
    if (!tip || !knuckle || !arch) return;
    const look = await looking;
    const taken = await look.tapSkin({ tip, knuckle, arch });
    if (asked !== round || stopped) return;
    if (taken.ok) return begin({ kind: 'skin' }, asked);
    // All but the refused one stay.
    const { [taken.error.name]: _refused, ...rest } = tapped;
    state.setState({ tapped: rest, refusal: taken.error.kind });
  };

  const tap = async (at: Spot): Promise<void> => {
    const { mode, tapped, start } = state.getState();
    const name = names.find((n) => !tapped[n]);
    if (mode === 'find' || start || !name) return;
    const asked = ++round;
    if (mode === 'skin') {
      const all = { ...tapped, [name]: at };
      state.setState({ tapped: all, refusal: null });
      return tapSkin(all, asked);
    }
    const look = await looking;
    const found = await look.learn(at);
    if (asked !== round || stopped) return;
    if (!found.ok) return state.setState({ refusal: found.error.kind });
    learned = { ...learned, [name]: found.value };
    state.setState({ tapped: { ...tapped, [name]: found.value.at }, refusal: null });
    if (names.every((n) => learned[n])) await begin({ kind: 'stickers', named: learned }, asked);
  };

  const looking: Promise<StickerLook> = services.lookAtStickers(plan.pictures, {
    onOpened: ({ size, durationMs }) => {
      state.setState({ size, durationMs });
      void search();
    },
    onFrame: (frame) => {
      if (!stopped) onFrame(frame);
    },
    onSeen: hear,
    onProblem: (problem) => {
      if (!stopped) state.setState({ problem });
    },
  });

  return {
    angle,
    names,
    state,
    seen,
    choose,
    tap,
    showAt(tMs) {
      const { durationMs, mode } = state.getState();
      if (durationMs === null) return;
      const shownMs = ms(Math.max(0, Math.min(tMs, durationMs)));
      void looking.then((look) => look.showAt(shownMs));
      state.setState({ shownMs });
      choose(mode);
    },
    ready() {
      const { start, shownMs } = state.getState();
      if (!start) return null;
      const { pictures } = plan;
      const from = pictures.kind === 'file' && shownMs > 0 ? { pictures: { ...pictures, fromMs: shownMs } } : {};
      if (start.kind !== 'stickers') return { ...plan, ...from, stickers: start };
      return { ...plan, ...from, stickers: { ...start, named: placedNow(start.named, seen.getState().stickers) } };
    },
    stop() {
      stopped = true;
      round++;
      void looking.then((look) => look.stop());
    },
  };
}

/** Stickers where they were seen last. */
const placedNow = (named: NamedStickers, stickers: StickersSeen | null): NamedStickers =>
  Object.fromEntries(
    Object.entries(named).map(([name, sticker]) => {
      const point = stickers?.points[name as StickerName];
      return [name, point ? { ...sticker, at: { x: point.x, y: point.y } } : sticker];
    }),
  );
