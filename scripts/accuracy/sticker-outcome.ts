import type { SetResult } from '../../src/measure/set-result.ts';
import { measureRecording } from '../../src/record/measure-recording.ts';
import type { Recording } from '../../src/record/recording.ts';
import { median } from '../../src/signal/median.ts';
import type { ClipWithTruth, TrueRep, Truth } from './clip-with-truth.ts';
import { type MatchedRep, matchedReps } from './matched-reps.ts';
import { truePartials } from './true-partials.ts';

/** How one set by stickers, or by points on skin, came out. Degrees and px; errors without their sign. */
export interface StickerOutcome {
  readonly clip: ClipWithTruth;
  /** Null: nothing was found in it. */
  readonly result: SetResult | null;
  readonly truePartialCount: number;
  readonly matched: readonly MatchedRep[];
  /** Of every sticker that was seen itself, one a frame. */
  readonly centreErrorsPx: readonly number[];
  /** Of every frame with an angle, from rest. */
  readonly angleErrorsDeg: readonly number[];
}

/** Before a movement so long tells where it starts from, ms. */
const REST_MS = 300;

type TrueFrame = Truth['frames'][number];

/** The angle between the places where stickers were drawn, from rest; undefined: the clip has none. */
const inPictureDeg = (frame: TrueFrame): number | undefined => frame.toeInPictureDeg ?? frame.ankleInPictureDeg;

/** How far the angle in the picture truly moved in a repetition. Between quick ones the rest is shorter than REST_MS: what came before is not part of it. */
function trueRange({ frames, reps }: Truth, { startMs, endMs }: TrueRep): number {
  const doneMs = Math.max(0, ...reps.flatMap((r) => (r.endMs <= startMs ? [r.endMs] : [])));
  const between = (from: number, to: number) =>
    frames.flatMap((f) => (f.tMs >= from && f.tMs <= to ? [inPictureDeg(f) ?? Number.NaN] : []));
  return Math.max(...between(startMs, endMs)) - (median(between(Math.max(startMs - REST_MS, doneMs), startMs)) ?? 0);
}

/** The true frame at a time; a decoder's times are those of the frames to within rounding. */
const frameAt = ({ frames }: Truth, tMs: number): TrueFrame | undefined =>
  frames.reduce<TrueFrame | undefined>(
    (best, f) => (best && Math.abs(best.tMs - tMs) <= Math.abs(f.tMs - tMs) ? best : f),
    undefined,
  );

/** Measures a recording of a clip and sets it against where its stickers were drawn. @param recording null: nothing was found */
export function stickerOutcome(clip: ClipWithTruth, recording: Recording | null): StickerOutcome {
  const { truth } = clip;
  const truePartialCount = truePartials(clip);
  if (!recording) return { clip, result: null, truePartialCount, matched: [], centreErrorsPx: [], angleErrorsDeg: [] };
  const result = measureRecording(recording);
  const reps = truth.reps.map((rep) => ({ ...rep, trueRangeDeg: trueRange(truth, rep) }));
  const centreErrorsPx = recording.observations.flatMap(({ tMs, stickers }) => {
    const drawn = frameAt(truth, tMs)?.stickersPx ?? {};
    return Object.entries(stickers?.points ?? {}).flatMap(([name, point]) => {
      const at = drawn[name];
      return at && point && !point.bridged ? [Math.hypot(point.x - at[0], point.y - at[1])] : [];
    });
  });
  const angleErrorsDeg = result.curve.tMs.flatMap((tMs, i) => {
    const measured = result.curve.angleDeg[i] ?? null;
    const real = frameAt(truth, tMs);
    const realDeg = real && inPictureDeg(real);
    return measured === null || realDeg === undefined ? [] : [Math.abs(measured - realDeg)];
  });
  const matched = matchedReps(result, { exercise: clip.exercise, truth: { ...truth, reps } });
  return { clip, result, truePartialCount, matched, centreErrorsPx, angleErrorsDeg };
}
