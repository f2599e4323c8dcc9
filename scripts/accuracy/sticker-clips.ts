import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { StickerWay } from '../../src/cli/sticker-options.ts';
import { type ClipWatcher, startClipWatcher } from '../../src/cli/watch-clip.ts';
import { exerciseOf } from '../../src/exercises/catalogue.ts';
import { decodeRecording, type Recording } from '../../src/record/recording.ts';
import { fail, ok, type Result } from '../../src/result.ts';
import type { ToeOrder } from '../../src/stickers/arrange.ts';
import type { Spot } from '../../src/stickers/rgba-picture.ts';
import { VARIANTS, variantOf } from './clip-variants.ts';
import type { ClipWithTruth } from './clip-with-truth.ts';
import { type StickerOutcome, stickerOutcome } from './sticker-outcome.ts';

/** All that was watched through stickers or points on skin. */
export interface StickerFindings {
  /** By stickers, as filmed. */
  readonly plain: readonly StickerOutcome[];
  /** The same clips made harder, by the variant's name. */
  readonly harder: readonly (readonly [string, readonly StickerOutcome[]])[];
  /** By three points that were named in the first picture, stickers or none. */
  readonly points: readonly StickerOutcome[];
}

interface WatchingFailed {
  readonly kind: 'not-watched';
  readonly words: string;
}

/** Whether a clip is seen by stickers, or by points on skin, and not by the pose model. */
export const isBySticker = ({ exercise, truth }: ClipWithTruth): boolean =>
  truth.seenBy === 'stickers' || exerciseOf(exercise).seenBy[0] === 'stickers';

/** Where a toe's three points truly are in the first picture; null: not a toe's clip. */
export function pointsOf({ truth }: ClipWithTruth): ToeOrder<Spot> | null {
  const { tip, knuckle, arch } = truth.frames[0]?.stickersPx ?? {};
  const spot = ([x, y]: readonly [number, number]): Spot => ({ x, y });
  return tip && knuckle && arch ? { tip: spot(tip), knuckle: spot(knuckle), arch: spot(arch) } : null;
}

/** @returns null when nothing was found in it */
async function watched(
  { watch }: ClipWatcher,
  clip: ClipWithTruth,
  path: string,
  stickers: StickerWay,
): Promise<Result<Recording | null, WatchingFailed>> {
  const order = { exercise: clip.exercise, side: clip.side, model: 'full', poseEvery: 1, stickers } as const;
  const answer = await watch(path, order, () => undefined);
  if (!answer.ok) {
    return answer.error.kind === 'nothing-seen' ? ok(null) : fail({ kind: 'not-watched', words: answer.error.words });
  }
  const recording = decodeRecording(answer.value.recording);
  if (!recording.ok) throw new Error(`watched requires recordings that can be read back, got ${recording.error.kind}`);
  return ok(recording.value);
}

/** Watches all clips by stickers, as filmed and made harder with ffmpeg, and the toes' by points. No model is loaded: each takes seconds, and none is kept. */
export async function stickerFindings(
  clips: readonly ClipWithTruth[],
  say: (line: string) => void,
): Promise<Result<StickerFindings, WatchingFailed>> {
  const started = await startClipWatcher(say);
  if (!started.ok) return fail({ kind: 'not-watched', words: started.error.words });
  const watcher = started.value;
  const folder = await mkdtemp(join(tmpdir(), 'evenside-variants-'));
  const outcome = async (clip: ClipWithTruth, path: string, way: StickerWay, what: string): Promise<StickerOutcome> => {
    say(`${clip.id}, ${what}`);
    const recording = await watched(watcher, clip, path, way);
    if (!recording.ok) throw new UnwatchedClip(recording.error);
    return stickerOutcome(clip, recording.value);
  };
  try {
    const plain: StickerOutcome[] = [];
    const harder = VARIANTS.map(({ name }) => [name, [] as StickerOutcome[]] as const);
    const points: StickerOutcome[] = [];
    for (const clip of clips) {
      const spots = pointsOf(clip);
      if (spots) points.push(await outcome(clip, clip.path, { colour: null, skin: spots }, 'points'));
      if (clip.truth.bare) continue;
      plain.push(await outcome(clip, clip.path, { colour: null }, 'stickers'));
      for (const [i, variant] of VARIANTS.entries()) {
        const path = await variantOf(clip, variant, folder);
        if (!path.ok) return fail({ kind: 'not-watched', words: path.error.words });
        harder[i]?.[1].push(await outcome(clip, path.value, { colour: null }, variant.name));
      }
    }
    return ok({ plain, harder, points });
  } catch (cause) {
    if (cause instanceof UnwatchedClip) return fail(cause.failure);
    throw cause;
  } finally {
    await rm(folder, { recursive: true, force: true });
    await watcher.close();
  }
}

/** Carries a failure out of the loop past what is to be cleaned up. */
class UnwatchedClip extends Error {
  readonly failure: WatchingFailed;
  constructor(failure: WatchingFailed) {
    super(failure.words);
    this.failure = failure;
  }
}
