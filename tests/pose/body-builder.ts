import { LANDMARK, LANDMARK_COUNT, type Landmark, type LandmarkName } from '../../src/pose/landmarks.ts';
import { px, ratio } from '../../src/units.ts';

/** A body whose named points are given, px; all others lie at the origin. */
export function body(points: Partial<Record<LandmarkName, readonly [number, number]>>, visibility = 1): readonly Landmark[] {
  const all = Array.from({ length: LANDMARK_COUNT }, () => ({ x: px(0), y: px(0), z: px(0), visibility: ratio(visibility) }));
  for (const [name, at] of Object.entries(points)) {
    const index = LANDMARK[name as LandmarkName];
    const point = all[index];
    if (point) all[index] = { ...point, x: px(at[0]), y: px(at[1]) };
  }
  return all;
}

/** Someone lying in a wide picture with the head at this side. */
export const lying = (head: 'left' | 'right', visibility = 1): readonly Landmark[] => {
  const x = (fromLeft: number) => (head === 'left' ? fromLeft : 640 - fromLeft);
  return body(
    {
      nose: [x(60), 380],
      leftShoulder: [x(150), 390],
      rightShoulder: [x(155), 370],
      leftHip: [x(330), 400],
      rightHip: [x(335), 380],
      leftKnee: [x(450), 400],
      rightKnee: [x(455), 380],
    },
    visibility,
  );
};
