import { afterEach, describe, expect, test, vi } from 'vitest';
import { cameraErrorOf, FIRST_PICTURE_MS, listCameras, openCamera, watchCameras } from '../../src/capture/camera.ts';
import { fakeCamera } from './fake-camera.ts';

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** A page that may or may not use cameras; `video` shows a picture of `size`, or none. */
function page(
  mediaDevices: object | null,
  { secure = true, size = { width: 640, height: 480 } }: { secure?: boolean; size?: object | null } = {},
) {
  vi.stubGlobal('isSecureContext', secure);
  vi.stubGlobal('navigator', mediaDevices ? { mediaDevices } : {});
  vi.stubGlobal('document', {
    createElement: () => {
      const video = {
        onloadeddata: null as (() => void) | null,
        videoWidth: size && 'width' in size ? size.width : 0,
        videoHeight: size && 'height' in size ? size.height : 0,
        play: async () => {
          if (size) video.onloadeddata?.();
        },
      };
      return video;
    },
  });
}

const refusal = (name: string, message = '', constraint?: string) =>
  constraint === undefined ? new DOMException(message, name) : Object.assign(new Error(message), { name, constraint });

describe('a refused camera', () => {
  test.each([
    [refusal('NotAllowedError', 'Permission denied'), { kind: 'camera-denied', by: 'person' }],
    [refusal('NotAllowedError', 'Permission denied by system'), { kind: 'camera-denied', by: 'system' }],
    [refusal('SecurityError', 'not allowed here'), { kind: 'camera-denied', by: 'person' }],
    [refusal('NotFoundError', 'Requested device not found'), { kind: 'camera-none' }],
    [refusal('NotReadableError', 'Device in use'), { kind: 'camera-in-use' }],
    [
      refusal('NotReadableError', 'Could not start video source'),
      { kind: 'camera-unreadable', detail: 'Could not start video source' },
    ],
    [refusal('OverconstrainedError', '', 'deviceId'), { kind: 'camera-gone' }],
    [refusal('OverconstrainedError', '', 'width'), { kind: 'camera-constraints', constraint: 'width' }],
    [
      refusal('AbortError', 'Starting videoinput failed'),
      { kind: 'camera-unreadable', detail: 'AbortError: Starting videoinput failed' },
    ],
    ['no', { kind: 'camera-unreadable', detail: 'no' }],
  ])('%s', async (cause, error) => {
    expect(cameraErrorOf(cause)).toEqual(error);
    page({ getUserMedia: () => Promise.reject(cause) });
    expect(await openCamera()).toEqual({ ok: false, error });
  });

  test('a page that is not secure, or a browser without cameras', async () => {
    page(null, { secure: false });
    expect(await openCamera()).toEqual({ ok: false, error: { kind: 'camera-insecure' } });
    expect(await listCameras()).toEqual({ ok: false, error: { kind: 'camera-insecure' } });
    page(null);
    expect(await openCamera()).toEqual({ ok: false, error: { kind: 'camera-unsupported' } });
    watchCameras(() => undefined)();
  });
});

describe('opening a camera', () => {
  test('gives the size of its pictures and what it is; stopping switches it off', async () => {
    const fake = fakeCamera();
    const getUserMedia = vi.fn(async (_: MediaStreamConstraints) => fake.stream);
    page({ getUserMedia }, { size: { width: 480, height: 640 } });
    const opened = await openCamera('cam-1');
    if (!opened.ok) throw new Error(opened.error.kind);
    expect(opened.value.size).toEqual({ width: 480, height: 640 });
    expect(opened.value.device).toEqual({ id: 'cam-1', label: 'Camera One' });
    expect(getUserMedia.mock.calls[0]?.[0]).toMatchObject({ video: { deviceId: { exact: 'cam-1' } }, audio: false });
    expect(fake.stopped()).toBe(0);
    opened.value.stop();
    expect(fake.stopped()).toBe(1);
    expect((await opened.value.frames().next()).done).toBe(true);
  });

  test('without a choice asks for the one that looks at the person', async () => {
    const getUserMedia = vi.fn(async (_: MediaStreamConstraints) => fakeCamera().stream);
    page({ getUserMedia });
    expect((await openCamera()).ok).toBe(true);
    expect(getUserMedia.mock.calls[0]?.[0]).toMatchObject({ video: { facingMode: 'user', frameRate: { ideal: 30 } } });
  });

  test('that shows no picture is given up, and the camera goes off', async () => {
    vi.useFakeTimers();
    const fake = fakeCamera();
    page({ getUserMedia: async () => fake.stream }, { size: null });
    const opening = openCamera();
    await vi.advanceTimersByTimeAsync(FIRST_PICTURE_MS);
    expect(await opening).toEqual({ ok: false, error: { kind: 'camera-silent' } });
    expect(fake.stopped()).toBe(1);
  });
});

describe('the list of cameras', () => {
  test('has cameras only, and no name where the browser tells none', async () => {
    const device = (kind: string, deviceId: string, label: string) => ({ kind, deviceId, label });
    const devices = [device('audioinput', 'm', 'Mic'), device('videoinput', 'a', 'Front'), device('videoinput', '', '')];
    page({ enumerateDevices: async () => devices });
    expect(await listCameras()).toEqual({
      ok: true,
      value: [
        { id: 'a', label: 'Front' },
        { id: '', label: null },
      ],
    });
  });

  test('is watched until that is stopped', () => {
    const devices = new EventTarget();
    page(devices);
    let changes = 0;
    const stop = watchCameras(() => {
      changes += 1;
    });
    devices.dispatchEvent(new Event('devicechange'));
    stop();
    devices.dispatchEvent(new Event('devicechange'));
    expect(changes).toBe(1);
  });
});
