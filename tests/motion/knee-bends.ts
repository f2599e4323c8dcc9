/** A bend of the knee found in the skeleton's own angle, without the product's code. */
export interface KneeBend {
  readonly index: number;
  readonly peakDeg: number;
  /** Prominence: how far the angle falls on the less deep side before it rises higher than the peak. */
  readonly promDeg: number;
  readonly tMs: number;
}

/** A bend of less is no bend. deg */
const LEAST_DEG = 5;

/** Peaks by prominence, as in topography. @param angles knee flexion in space, one a frame */
export function kneeBends(angles: readonly number[]): readonly Omit<KneeBend, 'tMs'>[] {
  const lowest = (from: number, step: 1 | -1): number => {
    const peak = angles[from] as number;
    let low = peak;
    for (let i = from + step; i >= 0 && i < angles.length && (angles[i] as number) <= peak; i += step)
      low = Math.min(low, angles[i] as number);
    return low;
  };
  return angles.flatMap((peakDeg, index) => {
    const before = angles[index - 1];
    const after = angles[index + 1];
    if (before === undefined || after === undefined || before >= peakDeg || after > peakDeg) return [];
    const promDeg = peakDeg - Math.max(lowest(index, -1), lowest(index, 1));
    return promDeg >= LEAST_DEG ? [{ index, peakDeg, promDeg }] : [];
  });
}
