import type { CameraMotion } from '../flow/camera-motion.ts';
import type { Ms } from '../units.ts';

/** A camera that goes this far within this time has been moved; less is a soft stand, a touch of the table. Chosen. */
const JUMP_PX = 4;
const JUMP_DEG = 0.5;
const JUMP_MS = 300;

interface Watched {
  readonly tMs: Ms;
  readonly camera: CameraMotion | null;
}

/**
 * How far the picture stands turned in each frame against the frame from which the set counts, deg, clockwise positive: what is to be taken off
 * directions in it. A frame in which the camera was not watched keeps the value before.
 * @param levelMs when the set was found ready; null: the first frame is level
 */
export function cameraRolls(samples: readonly Watched[], levelMs: Ms | null): readonly number[] {
  let last = 0;
  const turned = samples.map(({ camera }) => {
    last = camera?.rotationDeg ?? last;
    return last;
  });
  const from = levelMs === null ? 0 : samples.findIndex((s) => s.tMs >= levelMs);
  const level = turned[Math.max(0, from)] ?? 0;
  return turned.map((t) => t - level);
}

/** Whether the camera was moved, from sample `from` on: by much in a short time. */
export function cameraMoved(samples: readonly Watched[], from: number): boolean {
  let start = from;
  for (let i = from; i < samples.length; i++) {
    const { tMs, camera } = samples[i] as Watched;
    while (tMs - (samples[start] as Watched).tMs > JUMP_MS) start++;
    for (let k = start; camera && k < i; k++) {
      const before = (samples[k] as Watched).camera;
      if (before && jumped(before, camera)) return true;
    }
  }
  return false;
}

const jumped = (a: CameraMotion, b: CameraMotion): boolean =>
  Math.hypot(b.shiftX - a.shiftX, b.shiftY - a.shiftY) > JUMP_PX || Math.abs(b.rotationDeg - a.rotationDeg) > JUMP_DEG;
