import { EncodedPacketSink, type InputVideoTrack } from 'mediabunny';
import { fail, ok, type Result } from '../result.ts';
import { type Ms, ms } from '../units.ts';
import type { Frame, PictureSize } from './frame.ts';

/** Where a browser hands over no decoded pictures (WebCodecs): they are shown by an element, one after the other, and copied. */
export interface ElementFile {
  readonly size: PictureSize;
  /** Every frame in order, the first at 0. The receiver closes each image. */
  readonly frames: () => AsyncGenerator<Frame, void, undefined>;
  readonly frameAt: (tMs: Ms) => Promise<Frame | null>;
  readonly close: () => void;
}

/** Looked for is the middle of a frame's time: elements round to one side or the other. */
const MIDDLE = 0.5;

/** Times of all frames by the file's own table, s, in order of showing. */
async function timesOf(track: InputVideoTrack): Promise<readonly number[]> {
  const times: number[] = [];
  for await (const { timestamp } of new EncodedPacketSink(track).packets(undefined, undefined, { metadataOnly: true })) {
    times.push(timestamp);
  }
  return [...new Set(times)].sort((a, b) => a - b);
}

function loaded(video: HTMLVideoElement, address: string): Promise<boolean> {
  return new Promise((resolve) => {
    video.onloadeddata = () => resolve(true);
    video.onerror = () => resolve(false);
    video.muted = true;
    video.playsInline = true;
    video.preload = 'auto';
    video.src = address;
  });
}

/** @returns whether it is there; an element that fails or is let go gets nowhere */
function soughtTo(video: HTMLVideoElement, timeS: number): Promise<boolean> {
  return new Promise((resolve) => {
    video.onseeked = () => resolve(true);
    video.onerror = () => resolve(false);
    video.onemptied = () => resolve(false);
    video.currentTime = timeS;
  });
}

/**
 * Opens a video that the browser can show. Slower than WebCodecs by far, since every picture is looked up for itself.
 * @param track of the same file: its times
 */
export async function openInElement(
  file: Blob,
  track: InputVideoTrack,
): Promise<Result<ElementFile, { readonly kind: 'not-shown' }>> {
  const address = URL.createObjectURL(file);
  const video = document.createElement('video');
  const close = () => {
    video.removeAttribute('src');
    video.load();
    URL.revokeObjectURL(address);
  };
  const times = await timesOf(track);
  const firstS = times[0];
  if (firstS === undefined || !(await loaded(video, address))) {
    close();
    return fail({ kind: 'not-shown' });
  }
  const pictureAt = async (i: number): Promise<Frame | null> => {
    const timeS = times[i] as number;
    const nextS = times[i + 1] ?? timeS + (timeS - (times[i - 1] ?? timeS));
    // An element's own time begins at the file's first frame or at 0; both are meant by the same number where the file begins at 0.
    if (!(await soughtTo(video, timeS + MIDDLE * (nextS - timeS)))) return null;
    // Set upright by the element itself.
    return { tMs: ms(Math.round((timeS - firstS) * 1e6) / 1e3), image: await createImageBitmap(video), turn: 0 };
  };
  return ok({
    size: { width: video.videoWidth, height: video.videoHeight },
    close,
    async frameAt(tMs) {
      const after = times.findIndex((t) => t > firstS + tMs / 1000 + 1e-6);
      const i = after < 0 ? times.length - 1 : after - 1;
      return i < 0 ? null : pictureAt(i);
    },
    async *frames() {
      for (let i = 0; i < times.length; i += 1) {
        const frame = await pictureAt(i);
        if (!frame) return;
        yield frame;
      }
    },
  });
}
