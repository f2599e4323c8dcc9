/** The page behind the command line: it watches the clip in the file field with the pose model, as the app does, and answers with a recording. */
import { openVideoFile, type VideoFile } from '../capture/video-file.ts';
import { exerciseOf } from '../exercises/catalogue.ts';
import { likeOf } from '../exercises/defined-exercise.ts';
import type { Observation } from '../measure/observation.ts';
import { encodeRecording } from '../record/recording.ts';
import { type FrameSource, videoFileSource } from '../run/frame-source.ts';
import { observations } from '../run/observations.ts';
import { startPoseClient } from '../run/pose-client.ts';
import { breakOf } from '../run/session-break.ts';
import { sparselyPosed } from '../run/sparsely-posed.ts';
import { startStickerClient } from '../run/sticker-client.ts';
import { thinnedSource } from '../run/thinned-source.ts';
import { ms } from '../units.ts';
import type { WatchAnswer, WatchOrder } from './page-protocol.ts';
import type { StickerWay } from './sticker-options.ts';

/** The site's root, seen from this page. */
const SITE = new URL('../../', document.baseURI).href;

const picturesOf = (video: VideoFile, { aSecond }: WatchOrder): FrameSource =>
  aSecond === undefined ? videoFileSource(video) : thinnedSource(videoFileSource(video), aSecond);

async function watchClip(order: WatchOrder): Promise<WatchAnswer> {
  const { exercise, side, model, poseEvery } = order;
  const file = document.querySelector<HTMLInputElement>('#clip')?.files?.[0];
  if (!file) throw new Error('watchClip requires a file in the field, got none');
  const opened = await openVideoFile(file);
  if (!opened.ok) return opened;
  const video = opened.value;
  const stickers = order.stickers ?? (exerciseOf(exercise).seenBy[0] === 'stickers' ? { colour: null } : null);
  if (stickers) return watchStickers(video, file.name, stickers, order);
  // The figures must not depend on the machine's graphics card.
  const started = await startPoseClient({ model, delegate: 'CPU', site: SITE });
  if (!started.ok) return started;
  const client = started.value;
  const seen: Observation[] = [];
  const spec = { exercise: exerciseOf(exercise), side, head: 'find' } as const;
  const from = performance.now();
  try {
    const all = picturesOf(video, order);
    const source = poseEvery > 1 ? sparselyPosed(all, poseEvery) : all;
    await watchAll(source, { ...client, begin: () => client.begin(spec) }, video, seen);
  } catch (cause) {
    const error = breakOf(cause);
    if (!error) throw cause;
    return { ok: false, error };
  } finally {
    client.close();
  }
  const of = typeof exercise === 'string' ? exercise : likeOf(exercise);
  const source = { file: file.name, ...video.size, durationMs: video.durationMs };
  return { ok: true, recording: encodeRecording(seen, { source, model, exercise: of, side }), watchMs: performance.now() - from };
}

async function watchAll(
  source: FrameSource,
  observer: Parameters<typeof observations>[1],
  { durationMs }: VideoFile,
  into: Observation[],
): Promise<void> {
  for await (const observation of observations(source, observer, new AbortController().signal)) {
    into.push(observation);
    window.frameDone?.(observation.tMs, durationMs);
  }
}

/** The same through stickers, or points on skin: no model is loaded, and what is found stands in each observation. */
async function watchStickers(
  video: VideoFile,
  name: string,
  { colour, skin }: StickerWay,
  order: WatchOrder,
): Promise<WatchAnswer> {
  const { exercise, side } = order;
  const client = startStickerClient();
  const { angle } = exerciseOf(exercise);
  const seen: Observation[] = [];
  const from = performance.now();
  try {
    // Asked now: the file is closed once it was watched.
    const first = await video.frameAt(ms(0));
    const tapped = first && skin ? await client.tapSkin(first, skin) : null;
    if (tapped && !tapped.ok) return { ok: false, error: { kind: 'no-skin-point', refused: tapped.error } };
    const found = first && !skin ? await client.find(first, angle, { toes: null, colour }) : null;
    const begin = () => client.begin({ angle, start: skin ? { kind: 'skin' } : { kind: 'find', colour } });
    await watchAll(picturesOf(video, order), { ...client, begin, follow: async () => [] }, video, seen);
    if (seen.every(({ stickers }) => !stickers)) {
      return { ok: false, error: { kind: 'no-stickers', why: found && !found.ok ? found.error.kind : 'too-few' } };
    }
  } catch (cause) {
    const error = breakOf(cause);
    if (!error) throw cause;
    return { ok: false, error };
  } finally {
    client.close();
  }
  const of = typeof exercise === 'string' ? exercise : likeOf(exercise);
  const source = { file: name, ...video.size, durationMs: video.durationMs };
  const recording = encodeRecording(seen, { source, model: 'stickers', exercise: of, side });
  return { ok: true, recording, watchMs: performance.now() - from };
}

window.watchClip = watchClip;
