import { type Ms, ms } from '../units.ts';
import { betweenFrames, type FrameTaken } from './between-frames.ts';
import { shownIn, watchShown } from './element-pictures.ts';
import { type Frame, type Picture, type PictureSize, uprightSize } from './frame.ts';
import { type NewestFrame, newestFrame } from './newest-frame.ts';
import { ownPicture } from './own-picture.ts';

/** Why a camera stopped in the middle: it went away, or its picture changed its shape as when a phone is turned. */
export type CameraLossCause = 'unplugged' | 'turned';

/** Thrown by a camera's frames when the camera is lost while it is used. */
export class CameraLost extends Error {
  override readonly name = 'CameraLost';
  readonly why: CameraLossCause;
  constructor(why: CameraLossCause) {
    super(`the camera was lost: ${why}`);
    this.why = why;
  }
}

/** Brings pictures from a camera's track into `deliver` until stopped. Times in µs on the camera's clock. */
type Pump = (
  track: MediaStreamVideoTrack,
  deliver: (image: Picture, us: number) => void,
  lost: (cause: Error) => void,
) => () => void;

/** Pictures as the camera made them, without a detour through an element. */
const pumpFromTrack: Pump = (track, deliver, lost) => {
  const reader = new MediaStreamTrackProcessor({ track }).readable.getReader();
  const run = async () => {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      deliver(value, value.timestamp);
    }
  };
  run().then(
    () => lost(new CameraLost('unplugged')),
    () => lost(new CameraLost('unplugged')),
  );
  return () => {
    reader.cancel().catch(() => undefined);
  };
};

/** Pictures as an element shows them: for browsers that give no access to the track's own. */
const pumpFromElement: Pump = (track, deliver, lost) => {
  const video = document.createElement('video');
  video.muted = true;
  video.playsInline = true;
  video.srcObject = new MediaStream([track]);
  let copying = false;
  const stopWatching = watchShown(video, (us) => {
    // One at a time: what is shown meanwhile is as a picture that never came.
    if (copying) return;
    copying = true;
    shownIn(video, us)
      .then(
        (image) => (stopped ? image.close() : deliver(image, us)),
        () => undefined,
      )
      .finally(() => {
        copying = false;
      });
  });
  let stopped = false;
  video.play().catch(() => {
    // Stopping while it starts to play is refused too, and is no loss.
    if (!stopped) lost(new CameraLost('unplugged'));
  });
  return () => {
    stopped = true;
    stopWatching();
    video.srcObject = null;
  };
};

/** Turns pictures into frames on a clock that begins at 0; a change of shape is a loss, since points before and after would not compare. */
function intake(box: NewestFrame): (image: Picture, us: number) => void {
  let firstUs: number | null = null;
  let size: PictureSize | null = null;
  const clock = (us: number): Ms => {
    firstUs ??= us;
    return ms((us - firstUs) / 1000);
  };
  return (image, us) => {
    const now = uprightSize(image, 0);
    size ??= now;
    const turned = now.width !== size.width || now.height !== size.height;
    const frame: Frame = { tMs: clock(us), image, turn: 0 };
    if (turned) box.end(new CameraLost('turned'));
    box.offer(frame);
  };
}

/**
 * The pictures of a camera as they come, on a strictly increasing clock that begins at 0 with the first. While the receiver is busy
 * only the newest is kept whole, and the brightness of those before it (`between`). Ends when `signal` aborts or the receiver stops; then the camera is switched off.
 * @param onDropped told, at the end, how many pictures nothing was kept of
 * @throws CameraLost when the camera goes away or its picture changes its shape
 */
export async function* cameraFrames(
  stream: MediaStream,
  signal: AbortSignal,
  onDropped?: (count: number) => void,
): AsyncGenerator<FrameTaken, void, undefined> {
  const [track] = stream.getVideoTracks();
  if (!track) throw new Error('cameraFrames requires a stream with a picture track, got none');
  const late = betweenFrames();
  const box = newestFrame(late.add);
  const lost = () => box.end(new CameraLost('unplugged'));
  const stop = () => box.end();
  // Only the camera's own end fires this; stopping it here does not.
  track.addEventListener('ended', lost);
  signal.addEventListener('abort', stop);
  let stopPump: (() => void) | null = null;
  try {
    if (signal.aborted) return;
    if (track.readyState === 'ended') throw new CameraLost('unplugged');
    const pump = 'MediaStreamTrackProcessor' in globalThis ? pumpFromTrack : pumpFromElement;
    stopPump = pump(track as MediaStreamVideoTrack, intake(box), (cause) => box.end(cause));
    for (let frame = await box.take(); frame; frame = await box.take()) {
      // First the copy: a camera's picture must not stay open.
      const image = await ownPicture(frame.image);
      const between = await late.take();
      yield { ...frame, image, between };
    }
  } finally {
    track.removeEventListener('ended', lost);
    signal.removeEventListener('abort', stop);
    box.end();
    stopPump?.();
    for (const each of stream.getTracks()) each.stop();
    onDropped?.(box.dropped() + late.dropped());
  }
}
