import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { exerciseOf } from '../../src/exercises/catalogue.ts';
import { decodeRecording, type Recording } from '../../src/record/recording.ts';
import { fail, ok, type Result } from '../../src/result.ts';
import { recordClip } from '../measure-command.ts';
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

/** Words of the command line for stickers of any colour. */
const BY_STICKERS: readonly string[] = ['--by', 'stickers'];

/** Words of the command line for the three points of a toe, where they truly are in the first picture; null: not a toe's clip. */
function pointsOf({ truth }: ClipWithTruth): readonly string[] | null {
  const { tip, knuckle, arch } = truth.frames[0]?.stickersPx ?? {};
  return tip && knuckle && arch
    ? Object.entries({ tip, knuckle, arch }).flatMap(([name, at]) => ['--point', `${name}=${at.join(',')}`])
    : null;
}

/** @param more words of the command line @returns null when nothing was found in it */
async function watched(
  root: string,
  { exercise, side }: ClipWithTruth,
  clip: string,
  more: readonly string[],
  out: string,
): Promise<Result<Recording | null, WatchingFailed>> {
  const made = await recordClip(root, { clip, exercise, side, model: 'full', more }, out);
  if (!made.ok) return made.error.kind === 'nothing-seen' ? ok(null) : fail({ kind: 'not-watched', words: made.error.words });
  const recording = decodeRecording(await readFile(out, 'utf8'));
  if (!recording.ok) throw new Error(`watched requires recordings that can be read back, got ${recording.error.kind}`);
  return ok(recording.value);
}

/** Watched at once: pictures of a file wait for nobody, so that this changes no figure. */
const AT_ONCE = 2;

interface Job {
  readonly clip: ClipWithTruth;
  /** `filmed`, `points`, or a variant's name. */
  readonly what: string;
  /** Words of the command line. */
  readonly way: readonly string[];
  readonly path: () => Promise<Result<string, { readonly kind: string; readonly words: string }>>;
}

/** What is to be watched of a clip; only the project's own are made harder. */
function jobsOf(clip: ClipWithTruth, isOwn: boolean, folder: string): readonly Job[] {
  const asFilmed = async () => ok(clip.path);
  const spots = pointsOf(clip);
  const byPoints = spots ? [{ clip, what: 'points', way: spots, path: asFilmed }] : [];
  if (clip.truth.bare) return byPoints;
  const harder = VARIANTS.map((v) => ({ clip, what: v.name, way: BY_STICKERS, path: () => variantOf(clip, v, folder) }));
  return [{ clip, what: 'filmed', way: BY_STICKERS, path: asFilmed }, ...byPoints, ...(isOwn ? harder : [])];
}

/** Watches all clips by stickers, the project's own made harder with ffmpeg too, and the toes' by points. No model is loaded, and nothing is kept. */
export async function stickerFindings(
  root: string,
  clips: readonly ClipWithTruth[],
  ownClips: ReadonlySet<string>,
  say: (line: string) => void,
): Promise<Result<StickerFindings, WatchingFailed>> {
  const folder = await mkdtemp(join(tmpdir(), 'evenside-variants-'));
  const jobs = clips.flatMap((clip) => jobsOf(clip, ownClips.has(clip.id), folder));
  const waiting = [...jobs];
  const outcomes = new Map<Job, StickerOutcome>();
  const work = async (): Promise<void> => {
    for (let job = waiting.shift(); job; job = waiting.shift()) {
      const path = await job.path();
      if (!path.ok) throw new UnwatchedClip({ kind: 'not-watched', words: path.error.words });
      const recording = await watched(root, job.clip, path.value, job.way, join(folder, `${jobs.indexOf(job)}.json`));
      if (!recording.ok) throw new UnwatchedClip(recording.error);
      const outcome = stickerOutcome(job.clip, recording.value);
      outcomes.set(job, outcome);
      say(`${job.clip.id}, ${job.what}: ${outcome.result?.count ?? 'nothing found'} of ${job.clip.truth.reps.length}`);
    }
  };
  try {
    await Promise.all(Array.from({ length: AT_ONCE }, work));
    const of = (what: string) => jobs.flatMap((job) => (job.what === what ? [outcomes.get(job) as StickerOutcome] : []));
    return ok({ plain: of('filmed'), points: of('points'), harder: VARIANTS.map(({ name }) => [name, of(name)] as const) });
  } catch (cause) {
    if (cause instanceof UnwatchedClip) return fail(cause.failure);
    throw cause;
  } finally {
    waiting.length = 0;
    await rm(folder, { recursive: true, force: true });
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
