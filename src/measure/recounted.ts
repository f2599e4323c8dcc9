import type { MeasuredRep, SetResult } from './set-result.ts';

/**
 * Marks what the finished measurement judges otherwise than the live count did, so that nothing that was shown as counted goes without a word: a repetition counted
 * then and kept apart now, or counted now and not then, is `recounted`; those that are not found at all are numbered, since what was heard of them is no measurement.
 * @param shown the repetitions as heard live, complete or not
 */
export function recounted(result: SetResult, shown: readonly MeasuredRep[]): SetResult {
  const heardAs = counterparts(result.reps, shown);
  const reps = result.reps.map((rep) =>
    rep.complete === (heardAs.get(rep)?.complete ?? false) ? rep : { ...rep, flags: [...rep.flags, 'recounted' as const] },
  );
  const found = new Set(heardAs.values());
  const notFound = shown.filter((rep) => rep.complete && !found.has(rep)).length;
  return { ...result, reps, ...(notFound > 0 ? { notFound } : {}) };
}

const overlapMs = (a: MeasuredRep, b: MeasuredRep): number => Math.min(a.endMs, b.endMs) - Math.max(a.startMs, b.startMs);
const peakIn = (a: MeasuredRep, b: MeasuredRep): boolean => a.peakMs >= b.startMs && a.peakMs <= b.endMs;

/** For each repetition of `list` the one of `others` that is the same movement: whose peak lies in it, then what overlaps it most, each once. */
function counterparts(list: readonly MeasuredRep[], others: readonly MeasuredRep[]): ReadonlyMap<MeasuredRep, MeasuredRep> {
  const of = new Map<MeasuredRep, MeasuredRep>();
  const taken = new Set<MeasuredRep>();
  let from = 0;
  const pairs = list.flatMap((rep) => {
    // Both are in order of time: what is over before this one begins is over for all later ones.
    while (from < others.length && (others[from] as MeasuredRep).endMs < rep.startMs) from++;
    const near: { rep: MeasuredRep; other: MeasuredRep; peaks: number; ms: number }[] = [];
    for (let i = from; i < others.length && (others[i] as MeasuredRep).startMs <= rep.endMs; i++) {
      const other = others[i] as MeasuredRep;
      near.push({ rep, other, peaks: Number(peakIn(rep, other)) + Number(peakIn(other, rep)), ms: overlapMs(rep, other) });
    }
    return near;
  });
  for (const { rep, other } of pairs.sort((x, y) => y.peaks - x.peaks || y.ms - x.ms)) {
    if (of.has(rep) || taken.has(other)) continue;
    of.set(rep, other);
    taken.add(other);
  }
  return of;
}
