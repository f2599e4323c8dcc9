/** The worker's side with a pose model that knows the answer, on drawn pictures of a leg. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { Luma } from '../../src/capture/luma.ts';
import type { Landmark } from '../../src/pose/landmarks.ts';
import { PoseService } from '../../src/run/pose-service.ts';
import { ms } from '../../src/units.ts';
import { legLandmarks, legPicture } from '../flow/limb-picture.ts';

const FRAME_MS = 50;
const TURN_A_FRAME_DEG = 1;
const REST_FRAMES = 12;

const model = vi.hoisted(() => ({ asked: [] as number[], answer: null as readonly Landmark[] | null }));
vi.mock('../../src/pose/landmarker.ts', () => ({
  loadLandmarker: async () => ({
    ok: true,
    value: {
      detect: (_: unknown, tMs: number) => {
        model.asked.push(tMs);
        return model.answer;
      },
      forget: async () => undefined,
      close: () => undefined,
    },
  }),
}));

beforeEach(() => {
  vi.stubGlobal('OffscreenCanvas', class {});
  model.asked = [];
});
afterEach(() => {
  vi.unstubAllGlobals();
});

const poseAt = (frame: number) => {
  const turn = -TURN_A_FRAME_DEG * Math.max(0, frame - REST_FRAMES);
  return { thighDeg: turn, shankDeg: 4 + turn };
};

function lumaAt(frame: number): Luma {
  const { width, height, data } = legPicture(poseAt(frame), { cloth: 'textured', noise: 3, seed: frame + 1 });
  return { width, height, data: Uint8Array.from(data) };
}

function pictureAt(frame: number) {
  const { width, height, data } = lumaAt(frame);
  let closed = 0;
  const image = {
    displayWidth: width,
    displayHeight: height,
    visibleRect: { width, height },
    format: 'I420',
    allocationSize: () => data.length,
    copyTo: async (to: Uint8Array) => {
      to.set(data);
      return [{ offset: 0, stride: width }];
    },
    close: () => {
      closed += 1;
    },
  };
  return { image: image as unknown as VideoFrame, closed: () => closed };
}

async function atRest(): Promise<PoseService> {
  const service = new PoseService();
  await service.load({ wasmBase: '', bundle: new Uint8Array(), delegate: 'CPU' });
  await service.begin({ posture: 'upright', head: 'find', side: 'right', held: false, segments: ['shank', 'thigh'] });
  for (let frame = 0; frame <= REST_FRAMES; frame++) {
    model.answer = legLandmarks(poseAt(frame), 0, 1);
    await service.observe(pictureAt(frame).image, 0, ms(frame * FRAME_MS));
  }
  return service;
}

const between = (frame: number) => ({ tMs: ms(frame * FRAME_MS), luma: lumaAt(frame) });

test('pictures between are followed without the pose model, in order, before the frame', async () => {
  const service = await atRest();
  model.asked = [];
  model.answer = legLandmarks(poseAt(15), 0, 1);
  const { image, closed } = pictureAt(15);
  const seen = [...service.follow([between(13), between(14)]), await service.observe(image, 0, ms(15 * FRAME_MS))];
  expect(seen.map(({ tMs }) => tMs / FRAME_MS)).toEqual([13, 14, 15]);
  expect(seen.map(({ landmarks }) => landmarks !== null)).toEqual([false, false, true]);
  expect(model.asked).toEqual([15 * FRAME_MS]);
  seen.forEach(({ motion, brightness }, i) => {
    expect(Math.abs((motion?.shank?.turnDeg as number) + TURN_A_FRAME_DEG * (i + 1))).toBeLessThan(0.5);
    expect(Math.abs((motion?.thigh?.turnDeg as number) + TURN_A_FRAME_DEG * (i + 1))).toBeLessThan(0.5);
    expect(brightness).toBeGreaterThan(0);
  });
  expect(closed()).toBe(1);
});

test('a picture between in which the leg is not followed is as one that never came; the frame always tells', async () => {
  const service = await atRest();
  model.answer = null;
  const { luma } = between(13);
  const covered = { tMs: ms(13 * FRAME_MS), luma: { ...luma, data: new Uint8Array(luma.data.length).fill(90) } };
  const seen = [...service.follow([covered, between(14)]), await service.observe(pictureAt(15).image, 0, ms(15 * FRAME_MS))];
  expect(seen.map(({ tMs }) => tMs / FRAME_MS)).toEqual([14, 15]);
  expect(seen.every(({ landmarks }) => landmarks === null)).toBe(true);
});

test('the picture is closed also when there is no set', async () => {
  const { image, closed } = pictureAt(0);
  expect(() => new PoseService().follow([between(1)])).toThrow('begun');
  await expect(new PoseService().observe(image, 0, ms(0))).rejects.toThrow('begun');
  expect(closed()).toBe(1);
});
