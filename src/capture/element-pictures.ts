import type { Picture } from './frame.ts';

/** Where a browser does not tell when a picture is shown, it is looked this often whether there is another one, ms. Chosen: as often as a camera gives them. */
const LOOK_MS = 33;

/** What `video` shows now, as a picture of its own. @param us its time, µs */
export const shownIn = async (video: HTMLVideoElement, us: number): Promise<Picture> =>
  // Browsers without WebCodecs give a copy that stands upright.
  typeof VideoFrame === 'undefined' ? createImageBitmap(video) : new VideoFrame(video, { timestamp: us });

/**
 * Tells of every picture that an element shows, by the browser's own word or, where it gives none, by looking at the element's time.
 * @param onShown its time in µs, on the clock of `performance.now()`
 * @returns stops telling
 */
export function watchShown(video: HTMLVideoElement, onShown: (us: number) => void): () => void {
  if ('requestVideoFrameCallback' in video) {
    const shown: VideoFrameRequestCallback = (now, { captureTime }) => {
      handle = video.requestVideoFrameCallback(shown);
      onShown(Math.round((captureTime ?? now) * 1000));
    };
    let handle = video.requestVideoFrameCallback(shown);
    return () => video.cancelVideoFrameCallback(handle);
  }
  const element: HTMLVideoElement = video;
  let lastS = Number.NaN;
  const timer = setInterval(() => {
    if (element.readyState < element.HAVE_CURRENT_DATA || element.currentTime === lastS) return;
    lastS = element.currentTime;
    onShown(Math.round(performance.now() * 1000));
  }, LOOK_MS);
  return () => clearInterval(timer);
}
