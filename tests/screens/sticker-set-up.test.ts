import { describe, expect, test } from 'vitest';
import type { Observation } from '../../src/measure/observation.ts';
import { fail, ok, type Result } from '../../src/result.ts';
import type { StickerTask } from '../../src/run/sticker-start.ts';
import { choicesIn } from '../../src/screens/choose/choices.ts';
import { planOf } from '../../src/screens/choose/plan.ts';
import type { SetPlan, StickerLook, StickerLookHooks } from '../../src/screens/services.ts';
import { createSetUp } from '../../src/screens/stickers/set-up.ts';
import { hearSign, isAllRight, SILENT, signOf } from '../../src/screens/stickers/set-up-voice.ts';
import type { StickerRefusal } from '../../src/stickers/refusal.ts';
import type { Spot } from '../../src/stickers/rgba-picture.ts';
import type { SkinRefusal } from '../../src/stickers/skin-points.ts';
import type { Sticker } from '../../src/stickers/sticker-at.ts';
import { ms, px } from '../../src/units.ts';

const PAIR: Sticker['pair'] = { sticker: { redGreen: 1, yellowBlue: 0 }, surround: { redGreen: 0, yellowBlue: 0 } };
const stickerAt = (x: number, y: number): Sticker => ({ at: { x, y }, diameterPx: 14, roundness: 0.95, pair: PAIR });
const FOOT = { tip: stickerAt(510, 165), knuckle: stickerAt(470, 168), arch: stickerAt(390, 169) };
const GLARE: StickerRefusal = { kind: 'glare', share: 0.5, most: 0.3 };
const FEW: StickerRefusal = { kind: 'too-few', count: 1, needed: 3 };

const plan = planOf('camera', choicesIn(JSON.stringify({ exercise: 'toe-lift', side: 'left' })), null) as SetPlan;

/** What is seen of the three in one frame. @param lost those that are not */
const seen = (tMs: number, lost: readonly string[] = [], tipY = 165): Observation => ({
  tMs: ms(tMs),
  landmarks: null,
  motion: null,
  camera: null,
  brightness: 120,
  stickers: {
    implausible: false,
    points: Object.fromEntries(
      Object.entries(FOOT).map(([name, { at }]) => [
        name,
        lost.includes(name) ? null : { x: px(at.x), y: px(name === 'tip' ? tipY : at.y), errorPx: px(0.1), bridged: false },
      ]),
    ),
  },
});

/** A camera whose answers are given. */
function look(
  answers: {
    readonly find?: readonly Result<typeof FOOT, StickerRefusal>[];
    readonly learn?: (at: Spot) => Result<Sticker, StickerRefusal>;
    readonly tapSkin?: () => Result<null, SkinRefusal>;
  },
  of = plan,
) {
  const finds = [...(answers.find ?? [])];
  const watched: StickerTask[] = [];
  let stops = 0;
  const hooks: StickerLookHooks[] = [];
  const fake: StickerLook = {
    find: async () => finds.shift() ?? fail(FEW),
    learn: async (at) => answers.learn?.(at) ?? fail(GLARE),
    tapSkin: async () => answers.tapSkin?.() ?? ok(null),
    watch: async (task) => {
      watched.push(task);
    },
    showAt: () => undefined,
    stop: () => {
      stops++;
    },
  };
  const waits: (() => void)[] = [];
  const setUp = createSetUp({
    services: {
      lookAtStickers: async (_, given) => {
        hooks.push(given);
        return fake;
      },
    },
    plan: of,
    onFrame: () => undefined,
    wait: () => new Promise((done) => waits.push(done)),
  });
  const open = async (lastsMs: number | null = null) => {
    hooks[0]?.onOpened({
      size: { width: px(640), height: px(480) },
      durationMs: lastsMs === null ? null : ms(lastsMs),
      preview: null,
    });
    await settled();
  };
  return { setUp, open, watched, hear: (o: Observation) => hooks[0]?.onSeen(o), waits, stops: () => stops };
}

const settled = () => new Promise((done) => setTimeout(done, 0));

test('what is refused is told, and looked for again until the three are found; the set begins where they are then', async () => {
  const { setUp, open, watched, hear, waits } = look({ find: [fail(FEW), ok(FOOT)], learn: () => ok(FOOT.tip) });
  await open();
  expect(setUp.state.getState()).toMatchObject({ start: null, refusal: 'too-few' });
  expect(setUp.ready()).toBeNull();
  waits[0]?.();
  await settled();
  expect(watched).toEqual([{ angle: 'great-toe-extension', start: { kind: 'stickers', named: FOOT } }]);
  hear(seen(0, [], 160));
  expect(setUp.state.getState()).toMatchObject({ refusal: null, checks: { seen: 'good', large: 'good', light: 'good' } });
  const { stickers } = setUp.ready() as SetPlan;
  expect(stickers).toMatchObject({
    kind: 'stickers',
    named: { tip: { at: { x: 510, y: 160 } }, arch: { at: { x: 390, y: 169 } } },
  });
});

test('a foot that moves, a sticker that is lost and one that glints are each told', async () => {
  const { setUp, open, hear } = look({ find: [ok(FOOT)], learn: () => fail(GLARE) });
  await open();
  for (let t = 0; t <= 700; t += 33) hear(seen(t));
  await settled();
  hear(seen(733));
  expect(setUp.state.getState()).toMatchObject({ refusal: 'glare', checks: { glare: 'bad', still: 'good' } });
  hear(seen(766, [], 150));
  expect(setUp.state.getState().checks.still).toBe('bad');
  hear(seen(800, ['tip']));
  expect(setUp.state.getState().checks).toMatchObject({ seen: 'bad', large: 'unknown' });
});

test('stickers that stay away are looked for anew', async () => {
  const { setUp, open, hear } = look({ find: [ok(FOOT)], learn: () => ok(FOOT.tip) });
  await open();
  for (let t = 0; t <= 1600; t += 100) hear(seen(t, ['arch']));
  await settled();
  expect(setUp.state.getState()).toMatchObject({ mode: 'find', start: null, refusal: 'too-few' });
});

test('taps are taken in order, a refused one is asked for again', async () => {
  const { setUp, open, watched } = look({
    learn: ({ x }) => {
      const near = Object.values(FOOT).find(({ at }) => at.x === x);
      return near ? ok(near) : fail({ kind: 'like-surround', contrast: 0.1, neededContrast: 0.25, share: 0 });
    },
  });
  await open();
  setUp.choose('tap');
  await setUp.tap({ x: 510, y: 165 });
  await setUp.tap({ x: 1, y: 1 });
  expect(setUp.state.getState()).toMatchObject({ tapped: { tip: FOOT.tip.at }, refusal: 'like-surround', start: null });
  await setUp.tap({ x: 470, y: 168 });
  await setUp.tap({ x: 390, y: 169 });
  expect(watched.at(-1)).toEqual({ angle: 'great-toe-extension', start: { kind: 'stickers', named: FOOT } });
  expect(setUp.state.getState()).toMatchObject({ refusal: null, start: { kind: 'stickers' } });
});

test('of points on the skin only the refused one is tapped again; the set begins with them', async () => {
  const answers: Result<null, SkinRefusal>[] = [fail({ kind: 'flat-skin', name: 'knuckle' }), ok(null)];
  const { setUp, open, watched } = look({ tapSkin: () => answers.shift() ?? ok(null) });
  await open();
  setUp.choose('skin');
  for (const { at } of Object.values(FOOT)) await setUp.tap(at);
  expect(setUp.state.getState()).toMatchObject({ refusal: 'flat-skin', start: null });
  expect(Object.keys(setUp.state.getState().tapped)).toEqual(['tip', 'arch']);
  await setUp.tap({ x: 468, y: 160 });
  expect(watched.at(-1)?.start).toEqual({ kind: 'skin' });
  expect(setUp.ready()?.stickers).toEqual({ kind: 'skin' });
});

test('whoever leaves lets the camera go, and nothing is taken any more', async () => {
  const { setUp, open, stops, watched, waits } = look({ find: [fail(FEW), ok(FOOT)] });
  await open();
  setUp.stop();
  waits[0]?.();
  await settled();
  expect(stops()).toBe(1);
  expect(watched).toEqual([]);
});

test('of a film one picture is looked at, once; another one is looked at anew, and measuring begins there', async () => {
  const file = new File(['film'], 'film.mp4');
  const film = planOf('file', choicesIn(JSON.stringify({ exercise: 'toe-lift', side: 'left' })), file) as SetPlan;
  const { setUp, open, watched, waits } = look({ find: [fail(FEW), ok(FOOT)] }, film);
  await open(4000);
  expect(setUp.state.getState()).toMatchObject({ refusal: 'too-few', start: null, durationMs: 4000 });
  expect(waits).toEqual([]);
  setUp.showAt(ms(1000));
  await settled();
  expect(watched).toHaveLength(1);
  expect(setUp.ready()?.pictures).toEqual({ kind: 'file', file, fromMs: 1000 });
  setUp.showAt(ms(-5));
  expect(setUp.state.getState()).toMatchObject({ shownMs: 0, start: null });
});

test('a sticker that is followed but glints, or is covered, says so', async () => {
  const { setUp, open, hear } = look({ find: [ok(FOOT)], learn: () => ok(FOOT.tip) });
  await open();
  const without = seen(0, ['tip']);
  hear({
    ...without,
    stickers: { points: {}, implausible: false, ...without.stickers, unseen: { tip: 'covered', arch: 'glare' } },
  });
  expect(setUp.state.getState()).toMatchObject({ unseen: 'glare', checks: { seen: 'bad' } });
  hear(seen(33));
  expect(setUp.state.getState()).toMatchObject({ unseen: null, checks: { seen: 'good' } });
});

describe('what is said aloud', () => {
  const GOOD = { seen: 'good', large: 'good', light: 'good', glare: 'good', still: 'good' } as const;
  const state = { mode: 'find', start: { kind: 'skin' }, refusal: null, checks: GOOD, unseen: null } as const;

  test('is the one thing that stands in the way, the foot that moves only when the set is to begin by itself', () => {
    const { setUp } = look({});
    const whole = { ...setUp.state.getState(), ...state };
    expect(signOf(whole, false)).toBe('good');
    expect(signOf({ ...whole, checks: { ...GOOD, still: 'bad' } }, false)).toBe('good');
    expect(signOf({ ...whole, checks: { ...GOOD, still: 'bad' } }, true)).toBe('moves');
    expect(signOf({ ...whole, checks: { ...GOOD, large: 'bad', light: 'bad' } }, true)).toBe('dark');
    expect(signOf({ ...whole, checks: { ...GOOD, seen: 'bad' }, unseen: 'covered' }, true)).toBe('covered');
    expect(signOf({ ...whole, start: null, refusal: 'too-small' }, false)).toBe('too-small');
    // Whoever taps reads.
    expect(signOf({ ...whole, mode: 'tap', start: null, refusal: 'glare' }, false)).toBeNull();
    expect(isAllRight(whole)).toBe(true);
    expect(isAllRight({ ...whole, checks: { ...GOOD, still: 'unknown' } })).toBe(false);
  });

  test('is said once it has stood for a second, and not again before something else was', () => {
    const told: [number, string][] = [];
    let voice = SILENT;
    const hear = (from: number, to: number, sign: Parameters<typeof hearSign>[1]) => {
      for (let t = from; t < to; t += 200) {
        const heard = hearSign(voice, sign, ms(t));
        voice = heard.state;
        if (heard.say) told.push([t, heard.say]);
      }
    };
    hear(0, 3000, 'searching');
    hear(3000, 3600, 'glare');
    hear(3600, 8000, 'good');
    hear(8000, 8400, 'gone');
    hear(8400, 12_000, 'good');
    hear(12_000, 14_000, 'gone');
    hear(14_000, 16_000, 'good');
    expect(told).toEqual([
      [4600, 'good'],
      [13_000, 'gone'],
      [15_000, 'good'],
    ]);
  });
});
