import { BREAK_MS } from '../../src/run/set-clock.ts';

/** One picture that a worker was asked about and answered. */
export interface Asked {
  /** On the set's own clock, which begins at 0 with each set and takes `BREAK_MS` of any break. */
  readonly tMs: number;
  /** On the page's clock. */
  readonly askedMs: number;
  readonly answeredMs: number;
}

/** Pictures of one set without a break between them: the set's clock and the page's go alike. */
export interface Stretch {
  readonly fromMs: number;
  readonly toMs: number;
  /** What the page's clock is ahead of the set's, when a picture gets to the worker as fast as it can. */
  readonly aheadMs: number;
  readonly pictures: readonly Asked[];
}

const stretchOf = (pictures: readonly Asked[]): Stretch => ({
  fromMs: (pictures[0] as Asked).askedMs,
  toMs: (pictures.at(-1) as Asked).answeredMs,
  aheadMs: Math.min(...pictures.map(({ tMs, askedMs }) => askedMs - tMs)),
  pictures,
});

/** A set's clock steps by exactly this much over a break, and by less anywhere else. */
const isBreak = (stepMs: number) => stepMs > BREAK_MS - 0.001;

/** The sets of these pictures, each as its stretches. @param asked in order; a clock that goes back is another set's */
export function setsOf(asked: readonly Asked[]): readonly (readonly Stretch[])[] {
  const sets: Asked[][][] = [];
  let last: Asked | null = null;
  for (const each of asked) {
    if (last === null || each.tMs <= last.tMs) sets.push([[each]]);
    else if (isBreak(each.tMs - last.tMs)) sets.at(-1)?.push([each]);
    else sets.at(-1)?.at(-1)?.push(each);
    last = each;
  }
  return sets.map((stretches) => stretches.map(stretchOf));
}

/** How long after a picture was there its answer came, ms, the fastest way to the worker in its own stretch left out. */
export const delaysOf = (set: readonly Stretch[]): readonly { readonly answeredMs: number; readonly delayMs: number }[] =>
  set.flatMap(({ aheadMs, pictures }) =>
    pictures.map(({ tMs, answeredMs }) => ({ answeredMs, delayMs: answeredMs - tMs - aheadMs })),
  );

/** A moment of the set's clock on the page's. */
export function pageMsOf(set: readonly Stretch[], tMs: number): number {
  const at = set.findLast(({ pictures }) => (pictures[0] as Asked).tMs <= tMs) ?? (set[0] as Stretch);
  return tMs + at.aheadMs;
}

/** From when to when nothing of a set was looked at, on the page's clock. */
export const breaksOf = (set: readonly Stretch[]): readonly (readonly [fromMs: number, toMs: number])[] =>
  set.slice(1).map(({ pictures, aheadMs }, i) => {
    const before = set[i] as Stretch;
    return [(before.pictures.at(-1) as Asked).tMs + before.aheadMs, (pictures[0] as Asked).tMs + aheadMs];
  });
