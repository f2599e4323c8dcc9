import type { SetResult } from '../../src/measure/set-result.ts';
import { measureRecording } from '../../src/record/measure-recording.ts';
import type { Recording } from '../../src/record/recording.ts';
import { betweenStickersDeg, rangeBetweenStickers } from '../../tests/clips/range-between-stickers.ts';
import type { ClipWithTruth, Truth } from './clip-with-truth.ts';
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

type TrueFrame = Truth['frames'][number];

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
  const reps = truth.reps.map((rep) => ({ ...rep, trueRangeDeg: rangeBetweenStickers(truth, rep) }));
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
    const realDeg = real && betweenStickersDeg(real);
    return measured === null || realDeg === undefined ? [] : [Math.abs(measured - realDeg)];
  });
  const matched = matchedReps(result, { exercise: clip.exercise, truth: { ...truth, reps } });
  return { clip, result, truePartialCount, matched, centreErrorsPx, angleErrorsDeg };
}
