/** The worker's side on drawn pictures: the canvas that Node lacks hands over what was drawn. */
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { exerciseOf } from '../../src/exercises/catalogue.ts';
import { stickerObserver } from '../../src/run/sticker-client.ts';
import { StickerService } from '../../src/run/sticker-service.ts';
import { ms } from '../../src/units.ts';
import { type Disc, draw, GREEN, WALL } from '../stickers/drawn-picture.ts';
import { CanvasStandIn, drawnFrame } from './drawn-frames.ts';

beforeEach(() => vi.stubGlobal('OffscreenCanvas', CanvasStandIn));
afterEach(() => vi.unstubAllGlobals());

const TIP_DEG = 12;
/** A foot whose toe stands `upDeg` up, toes to the right. @param dx all of it moved, px */
function discs(upDeg: number, dx = 0): readonly Disc[] {
  const rad = (upDeg * Math.PI) / 180;
  const at = (x: number, y: number): Disc => ({ at: { x: x + dx, y }, radiusPx: 9, colour: GREEN });
  return [at(220, 150), at(130, 150), at(220 + 45 * Math.cos(rad), 150 - 45 * Math.sin(rad))];
}

const frame = (seen: readonly Disc[], scale = 1) =>
  drawnFrame(draw({ width: 640, height: 360, ground: WALL, discs: seen, noise: 2 }), scale);

const TOE = 'great-toe-extension' as const;
const FIND = { angle: TOE, start: { kind: 'find', colour: null } } as const;

describe('stickers', () => {
  test('are found by themselves and followed, in px of the picture itself however large it is, and every picture is closed', () => {
    for (const scale of [1, 2]) {
      const service = new StickerService();
      service.begin(FIND);
      for (let i = 0; i < 12; i++) {
        const image = frame(discs(TIP_DEG + i), scale);
        const { stickers, landmarks, motion } = service.observe(image, 0, ms(i * 33));
        expect(image.closed).toBe(1);
        expect({ landmarks, motion }).toEqual({ landmarks: null, motion: null });
        const rad = ((TIP_DEG + i) * Math.PI) / 180;
        const { tip, arch } = stickers?.points ?? {};
        expect(Math.abs((tip?.x ?? Number.NaN) - scale * (220.5 + 45 * Math.cos(rad)))).toBeLessThan(0.5 * scale);
        expect(Math.abs((tip?.y ?? Number.NaN) - scale * (150.5 - 45 * Math.sin(rad)))).toBeLessThan(0.5 * scale);
        expect(Math.abs((arch?.x ?? Number.NaN) - scale * 130.5)).toBeLessThan(0.5 * scale);
      }
    }
  });

  test('found before a set are those that the set follows, also from another clock and a foot that has moved a little', () => {
    const service = new StickerService();
    const found = service.find(frame(discs(5), 2), 0, TOE, { toes: null, colour: null });
    if (!found.ok) throw new Error(found.error.kind);
    service.begin({ angle: TOE, start: { kind: 'stickers', named: found.value } });
    const { stickers } = service.observe(frame(discs(5, 6), 2), 0, ms(7_000_000));
    expect(Object.keys(stickers?.points ?? {}).sort()).toEqual(['arch', 'knuckle', 'tip']);
    expect(Math.abs((stickers?.points.knuckle?.x ?? Number.NaN) - 2 * 226.5)).toBeLessThan(1);
  });

  test('are learnt from a tap, and a tap on the wall is refused', () => {
    const service = new StickerService();
    const learnt = service.learn(frame(discs(0), 2), 0, { x: 440, y: 300 });
    expect(learnt.ok && Math.abs(learnt.value.at.x - 441) < 1 && Math.abs(learnt.value.diameterPx - 36) < 4).toBe(true);
    expect(service.learn(frame(discs(0), 2), 0, { x: 1000, y: 600 }).ok).toBe(false);
  });

  test('of another colour than the one that was named are not looked at', () => {
    const service = new StickerService();
    const look = (colour: string) => service.find(frame(discs(10)), 0, TOE, { toes: null, colour });
    expect(look('#1ebe50').ok).toBe(true);
    expect(look('#eb3296')).toMatchObject({ ok: false, error: { kind: 'too-few', count: 0 } });
  });

  test('that are nowhere are none, and are found once they come', () => {
    const service = new StickerService();
    service.begin(FIND);
    expect(service.observe(frame([]), 0, ms(0)).stickers).toBeNull();
    expect(service.observe(frame(discs(5)), 0, ms(400)).stickers?.points.tip).toBeTruthy();
  });

  test('of an ankle are told apart by where they lie: the shin highest, the ankle next to it', () => {
    const service = new StickerService();
    const at = (x: number, y: number): Disc => ({ at: { x, y }, radiusPx: 9, colour: GREEN });
    const found = service.find(frame([at(300, 60), at(310, 220), at(440, 290)]), 0, 'ankle-dorsiflexion', {
      toes: null,
      colour: null,
    });
    if (!found.ok) throw new Error(found.error.kind);
    const { shin, ankle, forefoot } = found.value;
    expect([shin, ankle, forefoot].map((s) => Math.floor(s?.at.y ?? 0))).toEqual([60, 220, 290]);
  });
});

test('points that were tapped are followed from rest into the set, on its own clock', () => {
  const service = new StickerService();
  const spots = { knuckle: { x: 220.5, y: 150.5 }, arch: { x: 130.5, y: 150.5 }, tip: { x: 265.5, y: 150.5 } };
  expect(service.tapSkin(frame(discs(0)), 0, spots)).toEqual({ ok: true, value: null });
  service.begin({ angle: TOE, start: { kind: 'skin' } });
  for (let i = 0; i < 15; i++) {
    const { stickers } = service.observe(frame(discs(i)), 0, ms(90_000 + 33 * i));
    const rad = (i * Math.PI) / 180;
    const { tip } = stickers?.points ?? {};
    expect(Math.hypot((tip?.x ?? 0) - (220.5 + 45 * Math.cos(rad)), (tip?.y ?? 0) - (150.5 - 45 * Math.sin(rad)))).toBeLessThan(
      1,
    );
  }
  const beside = { ...spots, arch: { x: -40, y: 150 } };
  expect(service.tapSkin(frame([]), 0, beside)).toMatchObject({ ok: false, error: { kind: 'outside', name: 'arch' } });
});

test('a set with points on skin cannot begin before they were tapped', () => {
  expect(() => new StickerService().begin({ angle: TOE, start: { kind: 'skin' } })).toThrow('tapped');
});

test('a session looks through the client: pictures in between show nothing', async () => {
  const service = new StickerService();
  const client = {
    begin: async (task: Parameters<StickerService['begin']>[0]) => service.begin(task),
    observe: async ({ image, turn, tMs }: Parameters<Parameters<typeof stickerObserver>[0]['observe']>[0]) =>
      service.observe(image, turn, tMs),
  };
  const observer = stickerObserver(client, { kind: 'find', colour: null });
  await observer.begin({ exercise: exerciseOf('toe-lift'), side: 'left', head: 'find' });
  expect(await observer.follow([])).toEqual([]);
  expect((await observer.observe({ image: frame(discs(3)), turn: 0, tMs: ms(0) })).stickers?.points.tip).toBeTruthy();
});
