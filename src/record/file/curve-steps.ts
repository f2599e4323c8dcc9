import type { SetResult } from '../../measure/set-result.ts';
import { deg, ms } from '../../units.ts';

type Curve = SetResult['curve'];

/** How finely a file keeps a curve: units to one of what is measured. The format's own, see docs/record-format.md. */
const PER = { ms: 10, deg: 100 } as const;

/** A curve as steps from one value to the next, in whole units, the first from 0: a tenth of the characters of the numbers themselves. */
export interface CurveSteps {
  /** Tenths of a millisecond. */
  readonly t: readonly number[];
  /** Hundredths of a degree, from the last angle that was measured; null: not measured. */
  readonly a: readonly (number | null)[];
}

/** @param curve times in ms, angles in deg */
export function stepsOf({ tMs, angleDeg }: Curve): CurveSteps {
  let lastT = 0;
  let lastA = 0;
  const t = tMs.map((time) => {
    const now = Math.round(time * PER.ms);
    const step = now - lastT;
    lastT = now;
    return step + 0;
  });
  const a = angleDeg.map((angle) => {
    if (angle === null) return null;
    const now = Math.round(angle * PER.deg);
    const step = now - lastA;
    lastA = now;
    return step + 0;
  });
  return { t, a };
}

/** The curve that the steps make. Written again it gives the same steps. */
export function curveOf({ t, a }: CurveSteps): Curve {
  let lastT = 0;
  let lastA = 0;
  return {
    tMs: t.map((step) => {
      lastT += step;
      return ms(lastT / PER.ms);
    }),
    angleDeg: a.map((step) => {
      if (step === null) return null;
      lastA += step;
      return deg(lastA / PER.deg);
    }),
  };
}

/** Furthest from 0, whole units: beyond it a double no longer tells neighbours apart after dividing. Chosen: 30 years of ms. */
const FARTHEST = 1e13;

/** Whether the steps are whole numbers that stay within bounds. One loop, since a year of curves has millions of them. */
export function areSteps(steps: readonly unknown[], withGaps: boolean): boolean {
  let sum = 0;
  for (const step of steps) {
    if (step === null && withGaps) continue;
    if (typeof step !== 'number' || !Number.isInteger(step)) return false;
    sum += step;
    if (Math.abs(sum) > FARTHEST) return false;
  }
  return true;
}

/** Whether something is a curve as steps. */
export function isCurveSteps(curve: unknown): curve is CurveSteps {
  if (typeof curve !== 'object' || curve === null || !('t' in curve) || !('a' in curve)) return false;
  const { t, a } = curve;
  return Array.isArray(t) && Array.isArray(a) && t.length === a.length && areSteps(t, false) && areSteps(a, true);
}
