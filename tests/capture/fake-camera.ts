import type { FakePicture } from '../run/scripted-set.ts';

/** A camera's track and stream as far as the capture code uses them. */
export interface FakeCamera {
  readonly stream: MediaStream;
  readonly stopped: () => number;
  /** As if the plug were pulled. */
  readonly unplug: () => void;
}

export function fakeCamera(settings: MediaTrackSettings = { deviceId: 'cam-1' }, label = 'Camera One'): FakeCamera {
  let stopped = 0;
  class FakeTrack extends EventTarget {
    readyState: MediaStreamTrackState = 'live';
    readonly label = label;
    getSettings() {
      return settings;
    }
    stop() {
      stopped += 1;
      this.readyState = 'ended';
    }
  }
  const track = new FakeTrack();
  const stream = { getTracks: () => [track], getVideoTracks: () => [track] } as unknown as MediaStream;
  const unplug = () => {
    track.readyState = 'ended';
    track.dispatchEvent(new Event('ended'));
  };
  return { stream, stopped: () => stopped, unplug };
}

/** A `VideoFrame` of a camera, planar, of one brightness. */
export function cameraPicture(all: FakePicture[], timestampUs: number, width = 640, height = 480, level = 120): VideoFrame {
  const picture: FakePicture = { tMs: timestampUs / 1000, closed: 0 };
  all.push(picture);
  const close = () => {
    picture.closed += 1;
  };
  return {
    timestamp: timestampUs,
    displayWidth: width,
    displayHeight: height,
    visibleRect: { width, height },
    format: 'I420',
    allocationSize: () => width * height * 1.5,
    copyTo: async (to: Uint8Array) => {
      to.fill(level);
      return [{ offset: 0, stride: width }];
    },
    colorSpace: { toJSON: () => ({ primaries: 'bt709' }) },
    close,
  } as unknown as VideoFrame;
}

/** Stands in for the constructor of `VideoFrame` from pixels: makes pictures of `all`, which keep what they were made from. */
export function copiedPicture(all: FakePicture[]) {
  return class {
    constructor(pixels: Uint8Array, from: VideoFrameBufferInit) {
      Object.assign(this, cameraPicture(all, from.timestamp, from.codedWidth, from.codedHeight), { pixels, from });
    }
  };
}

/** Stands in for `MediaStreamTrackProcessor`; the test puts pictures into the newest one. */
export function fakeProcessor() {
  let controller: ReadableStreamDefaultController<VideoFrame> | null = null;
  let cancelled = 0;
  class FakeProcessor {
    readonly readable = new ReadableStream<VideoFrame>({
      start: (given) => {
        controller = given;
      },
      cancel: () => {
        cancelled += 1;
      },
    });
  }
  return {
    FakeProcessor,
    show: (image: VideoFrame) => controller?.enqueue(image),
    breakOff: () => controller?.error(new Error('the track is gone')),
    cancelled: () => cancelled,
  };
}
