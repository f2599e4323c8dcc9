import { afterEach, expect, test, vi } from 'vitest';
import { FIRST_PICTURE_MS } from '../../src/capture/camera.ts';
import { shareWindow } from '../../src/capture/shared-window.ts';

afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

/** A page whose browser answers the wish to share so; `size` is that of the first picture, null: none comes. */
function page(getDisplayMedia: unknown, size: { width: number; height: number } | null = { width: 1280, height: 720 }) {
  vi.stubGlobal('isSecureContext', true);
  vi.stubGlobal('navigator', { mediaDevices: getDisplayMedia ? { getDisplayMedia } : {} });
  vi.stubGlobal('document', {
    createElement: () => {
      const video = {
        onloadeddata: null as (() => void) | null,
        videoWidth: size?.width ?? 0,
        videoHeight: size?.height ?? 0,
        play: async () => {
          if (size) video.onloadeddata?.();
        },
      };
      return video;
    },
  });
}

const shared = () => {
  const track = { stopped: false, stop: () => undefined };
  track.stop = () => {
    track.stopped = true;
    return undefined;
  };
  return { track, stream: { getTracks: () => [track] } };
};

test('a window is asked for without its sound, and let go by stop', async () => {
  const { track, stream } = shared();
  const asked = vi.fn(async () => stream);
  page(asked);
  const window = await shareWindow();
  expect(asked).toHaveBeenCalledWith(expect.objectContaining({ audio: false }));
  if (!window.ok) throw new Error('sharing requires to go well here');
  expect(window.value.size).toEqual({ width: 1280, height: 720 });
  expect(track.stopped).toBe(false);
  window.value.stop();
  expect(track.stopped).toBe(true);
});

test.each([
  [new DOMException('', 'NotAllowedError'), { kind: 'window-denied' }],
  [new DOMException('', 'InvalidStateError'), { kind: 'window-denied' }],
  [new DOMException('odd', 'NotReadableError'), { kind: 'window-unreadable', detail: 'NotReadableError: odd' }],
])('%s becomes a kind of its own', async (cause, error) => {
  page(() => Promise.reject(cause));
  expect(await shareWindow()).toEqual({ ok: false, error });
});

test('a browser that cannot, and a page that is not secure', async () => {
  page(null);
  expect(await shareWindow()).toEqual({ ok: false, error: { kind: 'window-unsupported' } });
  page(async () => shared().stream);
  vi.stubGlobal('isSecureContext', false);
  expect(await shareWindow()).toEqual({ ok: false, error: { kind: 'window-unsupported' } });
});

test('a window without a picture is let go again', async () => {
  vi.useFakeTimers();
  const { track, stream } = shared();
  page(async () => stream, null);
  const waiting = shareWindow();
  await vi.advanceTimersByTimeAsync(FIRST_PICTURE_MS + 1);
  expect(await waiting).toEqual({ ok: false, error: { kind: 'window-silent' } });
  expect(track.stopped).toBe(true);
});
