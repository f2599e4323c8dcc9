/** A point or direction in space, y up; unit of the recording. */
export type Vector = readonly [x: number, y: number, z: number];

export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const times = (a: Vector, s: number): Vector => [a[0] * s, a[1] * s, a[2] * s];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const unitOf = (a: Vector): Vector => times(a, 1 / Math.hypot(...a));
/** Angle between two directions in space, deg in [0, 180]. */
export const angleBetween = (a: Vector, b: Vector): number => (Math.atan2(Math.hypot(...cross(a, b)), dot(a, b)) * 180) / Math.PI;
