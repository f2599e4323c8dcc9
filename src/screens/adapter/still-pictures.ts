import { openPhoto } from '../../capture/photo.ts';
import { openVideoFile, type VideoFile } from '../../capture/video-file.ts';
import { exerciseOf } from '../../exercises/catalogue.ts';
import type { Observation } from '../../measure/observation.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { PoseClient } from '../../run/pose-client.ts';
import { ms } from '../../units.ts';
import type { LookedAtPhoto, Problem, StillServices } from '../services.ts';
import { clients } from './kept-clients.ts';
import { problemOf } from './problem-of.ts';

/** The model follows a person from picture to picture and finds the leg better with each: a photo is shown to it so many times. Chosen. */
const LOOKS = 3;
/** Between two looks, on the model's clock. Chosen: a camera's step. */
const STEP_MS = 33;

/** Opens a film to look at its pictures one by one. */
export async function openFilm(file: File): Promise<Result<Pick<VideoFile, 'frameAt' | 'close'>, Problem>> {
  const film = await openVideoFile(file);
  return film.ok ? film : fail(problemOf(film.error));
}

async function lookAt(picture: ImageBitmap, client: PoseClient): Promise<Observation> {
  let seen: Observation | null = null;
  for (let i = 0; i < LOOKS; i += 1) {
    const tMs = ms(i * STEP_MS);
    const image =
      typeof VideoFrame === 'undefined' ? await createImageBitmap(picture) : new VideoFrame(picture, { timestamp: tMs * 1000 });
    seen = await client.observe({ tMs, image, turn: 0 });
  }
  if (!seen) throw new Error(`lookAt requires at least one look, got ${LOOKS}`);
  return seen;
}

/** Opens a photo and lets the pose model look at it. */
export async function lookAtPhoto(
  file: File,
  { exercise, side, model }: Parameters<StillServices['photo']>[1],
  onLoading: Parameters<StillServices['photo']>[2],
): Promise<Result<LookedAtPhoto, Problem>> {
  const opened = await openPhoto(file);
  if (!opened.ok) return fail(problemOf(opened.error));
  const photo = opened.value;
  const client = await clients.get(model, onLoading);
  if (!client.ok) {
    photo.picture.close();
    return client;
  }
  try {
    await client.value.begin({ exercise: exerciseOf(exercise), side, head: 'find' });
    return ok({ ...photo, observation: await lookAt(photo.picture, client.value) });
  } catch {
    clients.drop();
    photo.picture.close();
    return fail({ kind: 'pose-failed' });
  }
}
