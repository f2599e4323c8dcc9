import { afterEach, expect, test, vi } from 'vitest';
import { ownPicture } from '../../src/capture/own-picture.ts';
import type { FakePicture } from '../run/scripted-set.ts';
import { cameraPicture, copiedPicture } from './fake-camera.ts';

afterEach(() => {
  vi.unstubAllGlobals();
});

const made = () => {
  const all: FakePicture[] = [];
  const copies: FakePicture[] = [];
  vi.stubGlobal('VideoFrame', copiedPicture(copies));
  return { all, copies };
};

test('a picture is copied pixel by pixel, with its time, layout and colours, and closed', async () => {
  const { all, copies } = made();
  const own = await ownPicture(cameraPicture(all, 40_000, 8, 6, 33));
  expect(own).toMatchObject({
    timestamp: 40_000,
    pixels: new Uint8Array(72).fill(33),
    from: {
      format: 'I420',
      codedWidth: 8,
      codedHeight: 6,
      layout: [{ offset: 0, stride: 8 }],
      colorSpace: { primaries: 'bt709' },
    },
  });
  expect(all[0]?.closed).toBe(1);
  expect(copies[0]?.closed).toBe(0);
});

test.each([
  ['of the graphics card', { format: null }],
  ['that is shown turned', { displayWidth: 6, displayHeight: 8 }],
  ['that can not be read', { copyTo: () => Promise.reject(new Error('gone')) }],
])('a picture %s stays itself, open', async (_, change) => {
  const { all, copies } = made();
  const image = { ...cameraPicture(all, 0, 8, 6), ...change } as VideoFrame;
  expect(await ownPicture(image)).toBe(image);
  expect(all[0]?.closed).toBe(0);
  expect(copies).toEqual([]);
});
