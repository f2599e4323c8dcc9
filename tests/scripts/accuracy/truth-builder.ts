import type { ClipWithTruth, TrueRep } from '../../../scripts/accuracy/clip-with-truth.ts';

/** A true repetition from one time to another, up to `rangeDeg` from `startDeg`. */
export const trueRep = (startMs: number, endMs: number, rangeDeg: number, startDeg = 0): TrueRep => ({
  startMs,
  endMs,
  trueStartDeg: startDeg,
  truePeakDeg: startDeg + rangeDeg,
  trueRangeDeg: rangeDeg,
});

/** A clip whose joint is at rest but for half sine waves: `reps`, and `partials` that do not count. 30 frames a second. */
export function clip(
  exercise: ClipWithTruth['exercise'],
  reps: readonly TrueRep[],
  partials: readonly TrueRep[] = [],
): Pick<ClipWithTruth, 'exercise' | 'truth'> {
  const all = [...reps, ...partials];
  const durationMs = Math.max(...all.map((rep) => rep.endMs)) + 1000;
  const angleAt = (tMs: number): number => {
    const rep = all.find((r) => tMs >= r.startMs && tMs <= r.endMs);
    return rep ? rep.trueRangeDeg * Math.sin((Math.PI * (tMs - rep.startMs)) / (rep.endMs - rep.startMs)) : 0;
  };
  const frames = Array.from({ length: Math.floor((durationMs * 30) / 1000) }, (_, i) => {
    const tMs = (i * 1000) / 30;
    const angle = angleAt(tMs);
    return { tMs, ankleDeg: angle, legElevationDeg: angle, kneeFlexionDeg: 90 - angle };
  });
  const truth = {
    id: 'built',
    exercise: 'built',
    side: 'left' as const,
    measures: 'ankle',
    model: 'none',
    size: [640, 480] as [number, number],
    fps: 30,
    durationMs,
    camera: { yawDeg: 0, dist: 2 },
    reps: [...reps],
    frames,
  };
  return { exercise, truth };
}
