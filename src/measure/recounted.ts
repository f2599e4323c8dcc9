import type { MeasuredRep, SetResult } from './set-result.ts';

/**
 * Marks what the finished measurement judges otherwise than the live count did, so that nothing that was shown as counted goes without a word: a repetition counted
 * then and kept apart now, or counted now and not then, is `recounted`. One that was counted and is not found at all is kept as it was heard, in doubt and not counted.
 * @param shown the repetitions as heard live, complete or not
 */
export function recounted(result: SetResult, shown: readonly MeasuredRep[]): SetResult {
  // Where the view allowed no angle at all, its warning says why there is nothing.
  if (result.framesUsed === 0) return result;
  const heardAs = counterparts(result.reps, shown);
  const judged = result.reps.map((rep) =>
    rep.complete === (heardAs.get(rep)?.complete ?? false) ? rep : { ...rep, flags: [...rep.flags, 'recounted' as const] },
  );
  const found = new Set(heardAs.values());
  const missing = shown
    .filter((rep) => rep.complete && !found.has(rep))
    .map((rep) => ({ ...rep, complete: false, flags: [...rep.flags, 'partial', 'doubtful', 'recounted'] as const }));
  const reps = [...judged, ...missing].sort((a, b) => a.startMs - b.startMs).map((rep, i) => ({ ...rep, number: i + 1 }));
  return { ...result, reps, partialCount: reps.length - result.count };
}

const overlapMs = (a: MeasuredRep, b: MeasuredRep): number => Math.min(a.endMs, b.endMs) - Math.max(a.startMs, b.startMs);

/** For each repetition of `list` the one of `others` that is the same movement: of those that overlap it the one that does so most, each once. */
export function counterparts(
  list: readonly MeasuredRep[],
  others: readonly MeasuredRep[],
): ReadonlyMap<MeasuredRep, MeasuredRep> {
  const of = new Map<MeasuredRep, MeasuredRep>();
  const taken = new Set<MeasuredRep>();
  let from = 0;
  const pairs = list.flatMap((rep) => {
    // Both are in order of time: what is over before this one begins is over for all later ones.
    while (from < others.length && (others[from] as MeasuredRep).endMs < rep.startMs) from++;
    const near: { rep: MeasuredRep; other: MeasuredRep; ms: number }[] = [];
    for (let i = from; i < others.length && (others[i] as MeasuredRep).startMs <= rep.endMs; i++) {
      const other = others[i] as MeasuredRep;
      near.push({ rep, other, ms: overlapMs(rep, other) });
    }
    return near;
  });
  for (const { rep, other } of pairs.sort((x, y) => y.ms - x.ms)) {
    if (of.has(rep) || taken.has(other)) continue;
    of.set(rep, other);
    taken.add(other);
  }
  return of;
}
