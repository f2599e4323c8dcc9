import { ALL_FORMATS, BlobSource, Input, type InputVideoTrack, type VideoSample, VideoSampleSink } from 'mediabunny';
import { fail, ok, type Result } from '../result.ts';
import { type Ms, ms } from '../units.ts';
import { openInElement } from './element-file.ts';
import type { Frame, PictureSize, QuarterTurn } from './frame.ts';

/** Why a file gives no frames. `codec` is the codec's own name where the container tells it. */
export type VideoFileError =
  | { readonly kind: 'file-empty' }
  | { readonly kind: 'file-not-video' }
  | { readonly kind: 'file-no-picture' }
  | { readonly kind: 'file-codec'; readonly codec: string }
  | { readonly kind: 'file-damaged'; readonly readToMs: Ms };

/** An opened video file. Frames come with their own timestamps, as fast as they are asked for. */
export interface VideoFile {
  readonly size: PictureSize;
  readonly durationMs: Ms;
  /** Every frame in order, from the first; the first frame's time is 0. The receiver closes each image. */
  readonly frames: () => AsyncGenerator<Frame, void, undefined>;
  /**
   * The one frame that is shown at `tMs`, with its own time; null before the first and where it can't be decoded. The receiver closes its image.
   * Found by the file's own times: the frame asked for is the frame that comes.
   */
  readonly frameAt: (tMs: Ms) => Promise<Frame | null>;
  readonly close: () => void;
}

/** A file whose last picture comes this much before its end has been cut off; a last picture shown for long is shorter than that. Chosen. */
const MISSING_MS = 1000;

const isQuarterTurn = (x: number): x is QuarterTurn => x === 0 || x === 90 || x === 180 || x === 270;

/** The file's picture track, or why there is none; damaged headers count as "not a video". */
async function pictureTrack(input: Input): Promise<InputVideoTrack | 'not-video' | null> {
  try {
    if (!(await input.canRead())) return 'not-video';
    return await input.getPrimaryVideoTrack();
  } catch {
    return 'not-video';
  }
}

/**
 * Opens a video file for frame-exact reading through WebCodecs or, where the browser has none, an element.
 * @param file any container the demuxer knows (MP4, MOV, WebM, Matroska, MPEG-TS)
 * @returns the opened file, or why it can't be read; a file that breaks off later throws `VideoFileBroken` from `frames`
 */
export async function openVideoFile(file: Blob): Promise<Result<VideoFile, VideoFileError>> {
  if (file.size === 0) return fail({ kind: 'file-empty' });
  const input = new Input({ source: new BlobSource(file), formats: ALL_FORMATS });
  const refuse = (error: VideoFileError) => {
    input.dispose();
    return fail(error);
  };
  const track = await pictureTrack(input);
  if (track === 'not-video') return refuse({ kind: 'file-not-video' });
  if (!track) return refuse({ kind: 'file-no-picture' });
  try {
    if (typeof VideoDecoder === 'undefined') return await shownByElement(file, track, refuse, () => input.dispose());
    if (!(await track.canDecode())) return refuse({ kind: 'file-codec', codec: (await track.getCodec()) ?? 'unknown' });
    const firstS = await track.getFirstTimestamp();
    const durationMs = ms(((await track.computeDuration()) - firstS) * 1000);
    const size = { width: await track.getDisplayWidth(), height: await track.getDisplayHeight() };
    return ok({
      size,
      durationMs,
      frames: () => framesOf(track, firstS, durationMs),
      frameAt: (tMs) => frameAt(track, firstS, tMs),
      close: () => input.dispose(),
    });
  } catch {
    return refuse({ kind: 'file-damaged', readToMs: ms(0) });
  }
}

/** The same without WebCodecs: slower, of what the browser can show. */
async function shownByElement(
  file: Blob,
  track: InputVideoTrack,
  refuse: (error: VideoFileError) => Result<never, VideoFileError>,
  dispose: () => void,
): Promise<Result<VideoFile, VideoFileError>> {
  const shown = await openInElement(file, track);
  if (!shown.ok) return refuse({ kind: 'file-codec', codec: (await track.getCodec()) ?? 'unknown' });
  const { size, frames, frameAt, close } = shown.value;
  const durationMs = ms(((await track.computeDuration()) - (await track.getFirstTimestamp())) * 1000);
  const all = async function* () {
    let lastMs = Number.NEGATIVE_INFINITY;
    for await (const frame of frames()) {
      lastMs = frame.tMs;
      yield frame;
    }
    if (durationMs - lastMs > MISSING_MS) throw new VideoFileBroken(ms(Math.max(0, lastMs)));
  };
  return ok({
    size,
    durationMs,
    frames: all,
    frameAt,
    close: () => {
      close();
      dispose();
    },
  });
}

/** Times are rounded to a microsecond when they are told; looked for is what starts up to this much later, s. */
const ROUNDED_S = 1e-6;

const timeOf = ({ timestamp }: VideoSample, firstS: number): Ms => ms(Math.round((timestamp - firstS) * 1e6) / 1e3);
const turnOf = ({ rotation }: VideoSample): QuarterTurn => (isQuarterTurn(rotation) ? rotation : 0);

async function frameAt(track: InputVideoTrack, firstS: number, tMs: Ms): Promise<Frame | null> {
  const sample = await new VideoSampleSink(track).getSample(firstS + tMs / 1000 + ROUNDED_S).catch(() => null);
  if (!sample) return null;
  const frame = { tMs: timeOf(sample, firstS), image: sample.toVideoFrame(), turn: turnOf(sample) };
  sample.close();
  return frame;
}

/** Thrown by `frames` when a file that opened well breaks off in the middle. */
export class VideoFileBroken extends Error {
  override readonly name = 'VideoFileBroken';
  readonly readToMs: Ms;
  constructor(readToMs: Ms, options?: ErrorOptions) {
    super(`the video file breaks off after ${Math.round(readToMs)} ms`, options);
    this.readToMs = readToMs;
  }
}

/** Frames of a track, times relative to its first frame; frames whose time does not advance are left out. */
async function* framesOf(track: InputVideoTrack, firstS: number, durationMs: Ms): AsyncGenerator<Frame, void, undefined> {
  let lastMs = Number.NEGATIVE_INFINITY;
  const samples = new VideoSampleSink(track).samples();
  try {
    for (;;) {
      const next = await samples.next().catch((cause: unknown) => {
        throw new VideoFileBroken(ms(Math.max(0, lastMs)), { cause });
      });
      if (next.done) {
        // A file cut off in the middle ends like a whole one, only sooner than its own table of contents says.
        if (durationMs - lastMs > MISSING_MS) throw new VideoFileBroken(ms(Math.max(0, lastMs)));
        return;
      }
      const sample = next.value;
      const tMs = timeOf(sample, firstS);
      const turn = turnOf(sample);
      const image = tMs > lastMs ? sample.toVideoFrame() : null;
      sample.close();
      if (!image) continue;
      lastMs = tMs;
      yield { tMs, image, turn };
    }
  } finally {
    await samples.return();
  }
}
