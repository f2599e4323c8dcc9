/** The page behind the command line: it watches the clip in the file field with the pose model, as the app does, and answers with a recording. */
import { openVideoFile } from '../capture/video-file.ts';
import { exerciseOf } from '../exercises/catalogue.ts';
import { likeOf } from '../exercises/defined-exercise.ts';
import type { Observation } from '../measure/observation.ts';
import { encodeRecording } from '../record/recording.ts';
import { videoFileSource } from '../run/frame-source.ts';
import { observations } from '../run/observations.ts';
import { startPoseClient } from '../run/pose-client.ts';
import { breakOf } from '../run/session-break.ts';
import { sparselyPosed } from '../run/sparsely-posed.ts';
import type { WatchAnswer, WatchOrder } from './page-protocol.ts';

/** The site's root, seen from this page. */
const SITE = new URL('../../', document.baseURI).href;

async function watchClip({ exercise, side, model, poseEvery }: WatchOrder): Promise<WatchAnswer> {
  const file = document.querySelector<HTMLInputElement>('#clip')?.files?.[0];
  if (!file) throw new Error('watchClip requires a file in the field, got none');
  const opened = await openVideoFile(file);
  if (!opened.ok) return opened;
  const video = opened.value;
  // The figures must not depend on the machine's graphics card.
  const started = await startPoseClient({ model, delegate: 'CPU', site: SITE });
  if (!started.ok) return started;
  const client = started.value;
  const seen: Observation[] = [];
  const spec = { exercise: exerciseOf(exercise), side, head: 'find' } as const;
  const from = performance.now();
  try {
    const observer = { ...client, begin: () => client.begin(spec) };
    const source = poseEvery > 1 ? sparselyPosed(videoFileSource(video), poseEvery) : videoFileSource(video);
    for await (const observation of observations(source, observer, new AbortController().signal)) {
      seen.push(observation);
      window.frameDone?.(observation.tMs, video.durationMs);
    }
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

window.watchClip = watchClip;
