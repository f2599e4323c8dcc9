/** Search state: centroid place in frame px, rotation in rad, natural logarithm of the scale. */
export interface AlignmentPose {
  x: number;
  y: number;
  angle: number;
  logScale: number;
}
