/** What a camera shows over and over. */
export interface Shown {
  /** The peak of each repetition of one round, from its beginning. */
  readonly peaksMs: readonly number[];
  readonly roundMs: number;
  /** When nobody looked. */
  readonly breaks: readonly (readonly [fromMs: number, toMs: number])[];
}

/** Peaks on the clock of those that were counted. */
export interface Unlike {
  readonly missedMs: readonly number[];
  readonly extraMs: readonly number[];
}

const off = ({ missedMs, extraMs }: Unlike) => missedMs.length + extraMs.length;

/**
 * How the peaks that were counted stand to those that were shown, from the first that was counted; the camera's clock drifts a little against the page's. A
 * repetition that reaches into a break was not shown.
 * @param countedMs on the page's clock, as the breaks are
 */
export function againstShown(countedMs: readonly number[], { peaksMs, roundMs, breaks }: Shown): Unlike {
  const first = countedMs[0] ?? 0;
  const near = Math.min(...peaksMs.slice(1).map((t, i) => t - (peaksMs[i] as number))) / 2;
  const unseen = (tMs: number) => breaks.some(([from, to]) => tMs > from - near && tMs < to + near);
  const counts = peaksMs.map((_, start) => {
    // The next one that was shown: its number since the first one counted, and when it was.
    const shown = (n: number) => {
      const at = start + n;
      return (peaksMs[at % peaksMs.length] as number) + Math.floor(at / peaksMs.length) * roundMs - (peaksMs[start] as number);
    };
    let driftMs = first;
    let n = 0;
    const extraMs: number[] = [];
    const missedMs: number[] = [];
    for (const peakMs of countedMs) {
      while (peakMs - (shown(n) + driftMs) > near) {
        if (!unseen(shown(n) + driftMs)) missedMs.push(shown(n) + driftMs);
        n += 1;
      }
      const lateMs = peakMs - (shown(n) + driftMs);
      if (lateMs < -near) {
        extraMs.push(peakMs);
        continue;
      }
      driftMs += 0.3 * lateMs;
      n += 1;
    }
    return { missedMs, extraMs };
  });
  return counts.reduce((best, each) => (off(each) < off(best) ? each : best));
}
