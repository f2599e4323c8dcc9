import type { AngleCurve } from '../../measure/set-result.ts';

const tenth = (x: number): number => Math.round(x * 10) / 10;

/** The curve as an SVG path; it breaks where nothing was measured. @param x,y from ms and degrees to px */
export function curvePath(curve: AngleCurve, x: (tMs: number) => number, y: (angle: number) => number): string {
  let path = '';
  let drawing = false;
  curve.tMs.forEach((tMs, i) => {
    const angle = curve.angleDeg[i];
    if (angle === null || angle === undefined) {
      drawing = false;
      return;
    }
    path += `${drawing ? 'L' : 'M'}${tenth(x(tMs))} ${tenth(y(angle))}`;
    drawing = true;
  });
  return path;
}
