import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { CameraLost, cameraFrames } from '../../src/capture/camera-frames.ts';
import { decodedOf } from '../../src/capture/decoded.ts';
import type { FakePicture } from '../run/scripted-set.ts';
import { cameraPicture, copiedPicture, fakeCamera, fakeProcessor } from './fake-camera.ts';

/** Lets streams and promises come to rest. */
const settle = async () => {
  for (let i = 0; i < 10; i += 1) await new Promise((resolve) => setImmediate(resolve));
};

afterEach(() => {
  vi.unstubAllGlobals();
});

describe('frames of a camera’s track', () => {
  let all: FakePicture[];
  let processor: ReturnType<typeof fakeProcessor>;
  beforeEach(() => {
    all = [];
    processor = fakeProcessor();
    vi.stubGlobal('MediaStreamTrackProcessor', processor.FakeProcessor);
  });
  const show = (us: number, width?: number, height?: number) => processor.show(cameraPicture(all, us, width, height));

  test('have a clock in ms that begins at 0 and only advances', async () => {
    const abort = new AbortController();
    const frames = cameraFrames(fakeCamera().stream, abort.signal);
    const times: number[] = [];
    const receiving = (async () => {
      for await (const { tMs, image } of frames) {
        times.push(tMs);
        image.close();
      }
    })();
    for (const us of [5_000_000, 5_033_333, 5_033_333, 5_020_000, 5_100_000]) {
      await settle();
      show(us);
    }
    await settle();
    abort.abort();
    await receiving;
    expect(times).toEqual([0, 33.333, 100]);
    expect(all.every(({ closed }) => closed === 1)).toBe(true);
  });

  test('that were not taken in time are closed; their brightness comes with the next one', async () => {
    const camera = fakeCamera();
    let dropped = -1;
    const frames = cameraFrames(camera.stream, new AbortController().signal, (count) => {
      dropped = count;
    });
    const first = frames.next();
    await settle();
    show(0, 8, 6);
    expect((await first).value?.tMs).toBe(0);
    for (const us of [33_000, 66_000, 99_000]) show(us, 8, 6);
    await settle();
    const luma = { width: 8, height: 6, data: new Uint8Array(48).fill(120) };
    expect((await frames.next()).value).toMatchObject({
      tMs: 99,
      between: [
        { tMs: 33, luma },
        { tMs: 66, luma },
      ],
    });
    await frames.return();
    expect(dropped).toBe(0);
    expect(all.map(({ closed }) => closed)).toEqual([0, 1, 1, 0]);
  });

  test('of which nothing can be kept are counted', async () => {
    let dropped = -1;
    const frames = cameraFrames(fakeCamera().stream, new AbortController().signal, (count) => {
      dropped = count;
    });
    const first = frames.next();
    await settle();
    show(0, 8, 6);
    await first;
    const unreadable = { ...cameraPicture(all, 33_000, 8, 6), copyTo: () => Promise.reject(new Error('gone')) };
    processor.show(unreadable as VideoFrame);
    show(66_000, 8, 6);
    await settle();
    const next = (await frames.next()).value;
    expect(next).toMatchObject({ tMs: 66, between: [] });
    await frames.return();
    expect(dropped).toBe(1);
    expect(all.map(({ closed }) => closed)).toEqual([0, 1, 0]);
  });

  test('come in memory of their own, so that the camera’s are closed as soon as they are there', async () => {
    const copies: FakePicture[] = [];
    vi.stubGlobal('VideoFrame', copiedPicture(copies));
    const frames = cameraFrames(fakeCamera().stream, new AbortController().signal);
    const taken: VideoFrame[] = [];
    for (const us of [0, 33_000, 66_000]) {
      const next = frames.next();
      await settle();
      show(us, 8, 6);
      const { value } = await next;
      if (value) taken.push(decodedOf(value));
    }
    expect(all.map(({ closed }) => closed)).toEqual([1, 1, 1]);
    expect(copies.map(({ tMs, closed }) => [tMs, closed])).toEqual([
      [0, 0],
      [33, 0],
      [66, 0],
    ]);
    expect(taken.map(({ timestamp }) => timestamp)).toEqual([0, 33_000, 66_000]);
    await frames.return();
  });

  test('in between are closed when the camera ends, and come no more', async () => {
    const abort = new AbortController();
    const frames = cameraFrames(fakeCamera().stream, abort.signal);
    const first = frames.next();
    await settle();
    show(0, 8, 6);
    (await first).value?.image.close();
    for (const us of [33_000, 66_000, 99_000]) show(us, 8, 6);
    await settle();
    abort.abort();
    expect((await frames.next()).done).toBe(true);
    await settle();
    expect(all.map(({ closed }) => closed)).toEqual([1, 1, 1, 1]);
  });

  test('end when they are told to, also while one is awaited, and the camera goes off', async () => {
    const camera = fakeCamera();
    const abort = new AbortController();
    const frames = cameraFrames(camera.stream, abort.signal);
    const awaited = frames.next();
    await settle();
    abort.abort();
    expect((await awaited).done).toBe(true);
    expect(camera.stopped()).toBe(1);
    await settle();
    expect(processor.cancelled()).toBe(1);
  });

  test('end when the receiver has enough', async () => {
    const camera = fakeCamera();
    const received: number[] = [];
    const receiving = (async () => {
      for await (const frame of cameraFrames(camera.stream, new AbortController().signal)) {
        received.push(frame.tMs);
        frame.image.close();
        break;
      }
    })();
    await settle();
    show(0);
    await receiving;
    expect(received).toEqual([0]);
    expect(camera.stopped()).toBe(1);
  });

  test('never begin when they were told to end before', async () => {
    const camera = fakeCamera();
    const frames = cameraFrames(camera.stream, AbortSignal.abort());
    expect((await frames.next()).done).toBe(true);
    expect(camera.stopped()).toBe(1);
  });

  const lost = async (lose: (camera: ReturnType<typeof fakeCamera>) => void) => {
    const camera = fakeCamera();
    const frames = cameraFrames(camera.stream, new AbortController().signal);
    const first = frames.next();
    await settle();
    show(0);
    (await first).value?.image.close();
    const next = frames.next();
    lose(camera);
    const cause: unknown = await next.then(
      () => null,
      (thrown: unknown) => thrown,
    );
    expect(camera.stopped()).toBe(1);
    expect(all.every(({ closed }) => closed === 1)).toBe(true);
    return cause instanceof CameraLost ? cause.why : cause;
  };

  test('tell when the camera is pulled out', async () => {
    expect(await lost((camera) => camera.unplug())).toBe('unplugged');
    expect(await lost(() => processor.breakOff())).toBe('unplugged');
  });

  test('tell when the picture changes its shape', async () => {
    expect(await lost(() => show(33_000, 480, 640))).toBe('turned');
  });

  test('of a camera that is already gone tell so at once', async () => {
    const camera = fakeCamera();
    camera.unplug();
    await expect(cameraFrames(camera.stream, new AbortController().signal).next()).rejects.toBeInstanceOf(CameraLost);
  });
});

describe('frames by way of an element, where tracks give none', () => {
  test('come as the element shows them, with the time of capture where it is known', async () => {
    const all: FakePicture[] = [];
    let shown: VideoFrameRequestCallback | null = null;
    const cancelled: number[] = [];
    const video = {
      srcObject: null as unknown,
      play: async () => undefined,
      requestVideoFrameCallback: (callback: VideoFrameRequestCallback) => {
        shown = callback;
        return 7;
      },
      cancelVideoFrameCallback: (handle: number) => cancelled.push(handle),
    };
    vi.stubGlobal('MediaStreamTrackProcessor', undefined);
    Reflect.deleteProperty(globalThis, 'MediaStreamTrackProcessor');
    vi.stubGlobal('document', { createElement: () => video });
    vi.stubGlobal('MediaStream', class {});
    vi.stubGlobal(
      'VideoFrame',
      class {
        constructor(_: unknown, { timestamp }: VideoFrameInit) {
          Object.assign(this, cameraPicture(all, timestamp ?? 0));
        }
      },
    );
    const show = (now: number, captureTime?: number) => shown?.(now, { captureTime } as VideoFrameCallbackMetadata);
    const camera = fakeCamera();
    const frames = cameraFrames(camera.stream, new AbortController().signal);
    const first = frames.next();
    await settle();
    show(1010, 1000);
    expect((await first).value?.tMs).toBe(0);
    show(1050, 1033.5);
    expect((await frames.next()).value?.tMs).toBe(33.5);
    show(1100);
    expect((await frames.next()).value?.tMs).toBe(100);
    await frames.return();
    expect(cancelled).toEqual([7]);
    expect(video.srcObject).toBeNull();
    expect(camera.stopped()).toBe(1);
  });
});
