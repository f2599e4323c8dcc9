/** A straight scale from values to px. */
export interface Scale {
  readonly at: (value: number) => number;
  readonly ticks: readonly number[];
}

/** Steps that people count in. */
const NICE = [1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1800, 3600];

/**
 * A scale with few round ticks.
 * @param from,to values at the two ends; a range of nothing is widened by one
 * @param atFrom,atTo px of the two ends
 * @param most how many ticks there may be at most
 */
export function scaleOf(from: number, to: number, atFrom: number, atTo: number, most: number): Scale {
  const span = to > from ? to - from : 1;
  const step = NICE.find((nice) => span / nice <= most) ?? Math.ceil(span / most);
  // Adding zero makes a first tick of -0 a 0.
  const first = Math.ceil(from / step) * step + 0;
  const ticks: number[] = [];
  for (let tick = first; tick <= from + span; tick += step) ticks.push(tick);
  return { at: (value) => atFrom + ((value - from) / span) * (atTo - atFrom), ticks };
}
