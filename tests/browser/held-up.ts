import { LIVE_GAP_MS } from '../../src/reps/live-counter.ts';
import type { Reading } from './heap-readings.ts';
import { type Asked, pageMsOf, type Stretch } from './picture-times.ts';
import type { StoredRep } from './stored-results.ts';

/** When the watch's own collections let no picture come for longer than a movement is followed over: nobody looked then. */
export const heldUpBy = (
  readings: readonly Reading[],
  its: readonly Stretch[],
): readonly (readonly [fromMs: number, toMs: number])[] =>
  its.flatMap(({ pictures, aheadMs }) =>
    pictures.slice(1).flatMap(({ tMs }, i): (readonly [number, number])[] => {
      const [from, to] = [(pictures[i] as Asked).tMs + aheadMs, tMs + aheadMs];
      const collected = readings.some(({ toMs, collectedMs }) => from < collectedMs && to > toMs);
      return collected && to - from > LIVE_GAP_MS ? [[from, to]] : [];
    }),
  );

/** What was going on around a repetition that was missed, or counted without being shown. */
export function aroundMoment(
  tMs: number,
  { its, moved, readings }: { its: readonly Stretch[]; moved: readonly StoredRep[]; readings: readonly Reading[] },
): string {
  const near = its
    .flatMap(({ pictures, aheadMs }) => pictures.map((each) => each.tMs + aheadMs))
    .filter((at) => Math.abs(at - tMs) < 1500);
  const steps = near.slice(1).map((at, i) => at - (near[i] as number));
  const reps = moved
    .map(({ peakMs, rangeDeg, complete }) => ({ atMs: pageMsOf(its, peakMs) - tMs, rangeDeg, complete }))
    .filter(({ atMs }) => Math.abs(atMs) < 3000);
  const since = Math.min(...readings.map(({ toMs }) => tMs - toMs).filter((ms) => ms > -1500));
  return [
    `at ${(tMs / 1000).toFixed(1)} s, ${((tMs - (its[0] as Stretch).fromMs) / 1000).toFixed(1)} s into its set`,
    `${since.toFixed(0)} ms after a collection`,
    `pictures within 1.5 s: ${near.length}, longest step ${Math.max(...steps).toFixed(0)} ms`,
    `movements: ${reps.map(({ atMs, rangeDeg, complete }) => `${atMs.toFixed(0)} ms ${rangeDeg.toFixed(1)}°${complete ? '' : ' partial'}`).join(', ')}`,
  ].join('; ');
}
