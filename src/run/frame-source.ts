import type { FrameTaken } from '../capture/between-frames.ts';
import type { Camera } from '../capture/camera.ts';
import { cameraFrames } from '../capture/camera-frames.ts';
import { type Crop, croppedFrames } from '../capture/crop.ts';
import type { Frame, PictureSize } from '../capture/frame.ts';
import type { VideoFile } from '../capture/video-file.ts';
import type { Ms } from '../units.ts';

/** Where a session's pictures come from. */
export interface FrameSource {
  /** Of the upright picture, px. */
  readonly size: PictureSize;
  /** Live: of a picture not taken in time only the brightness is left. Otherwise every picture comes, as fast as it is asked for. */
  readonly live: boolean;
  /** To be called once. Whoever takes a frame closes its image. */
  readonly frames: () => AsyncGenerator<FrameTaken, void, undefined>;
  /** Ends `frames` soon and lets everything go; may be called at any time and again. */
  readonly stop: () => void;
}

export const cameraSource = (camera: Camera): FrameSource => ({
  size: camera.size,
  live: true,
  frames: camera.frames,
  stop: camera.stop,
});

/** @param fromMs pictures before it are passed over; left out: none are */
export const videoFileSource = (file: VideoFile, fromMs?: Ms): FrameSource => ({
  size: file.size,
  live: false,
  frames: () => (fromMs === undefined ? file.frames() : framesFrom(file.frames(), fromMs)),
  stop: file.close,
});

async function* framesFrom(frames: AsyncIterable<Frame>, fromMs: Ms): AsyncGenerator<Frame, void, undefined> {
  for await (const frame of frames) {
    if (frame.tMs < fromMs) frame.image.close();
    else yield frame;
  }
}

/** A shared window, or the part of it that was cut out. Stopping leaves the window shared: it may be measured again. @param crop from `cutOf` */
export function sharedWindowSource(stream: MediaStream, size: PictureSize, crop: Crop | null): FrameSource {
  const abort = new AbortController();
  // Of a copy, since a source that ends switches its own tracks off.
  const copy = stream.clone();
  const frames = () => cameraFrames(copy, abort.signal);
  return {
    size: crop ? { width: crop.width, height: crop.height } : size,
    live: true,
    frames: () => (crop ? croppedFrames(frames(), crop) : frames()),
    stop: () => {
      abort.abort();
      for (const track of copy.getTracks()) track.stop();
    },
  };
}
