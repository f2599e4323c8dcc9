import { describe, expect, test } from 'vitest';
import { legRaise } from '../../src/exercises/leg-raise.ts';
import type { CameraMotion } from '../../src/flow/camera-motion.ts';
import { movedPoint } from '../../src/flow/plane-motion.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { deg, px, ratio } from '../../src/units.ts';
import { lying, movementsAt, recording, SIZE, specOf } from './pose-builder.ts';
import { runSet } from './set-runner.ts';

const RANGES = [40, 45, 42];
const MIDDLE = { pivotX: px((SIZE.width - 1) / 2), pivotY: px((SIZE.height - 1) / 2) };

/** What the frames look like once the camera has gone where `cameraAt` says. */
function seenBy(observations: readonly Observation[], cameraAt: (tMs: number) => CameraMotion): readonly Observation[] {
  return observations.map((seen) => {
    const camera = cameraAt(seen.tMs);
    const turned = (part: 'foot' | 'shank' | 'thigh') => {
      const turn = seen.motion?.[part];
      return turn ? { ...turn, turnDeg: deg(turn.turnDeg + camera.rotationDeg) } : null;
    };
    return {
      ...seen,
      camera,
      landmarks:
        seen.landmarks?.map((p) => {
          const [x, y] = movedPoint({ ...camera, ...MIDDLE }, p.x, p.y);
          return { ...p, x: px(x), y: px(y) };
        }) ?? null,
      motion: seen.motion && { foot: turned('foot'), shank: turned('shank'), thigh: turned('thigh') },
    };
  });
}

const camera = (rotation: number, x = 0): CameraMotion => ({
  rotationDeg: deg(rotation),
  shiftX: px(x),
  shiftY: px(0),
  scale: ratio(1),
  agreement: ratio(0.95),
  points: 30,
});
/** A step from no motion to `to` in a fifth of a second. */
const stepAt =
  (fromMs: number, to: number) =>
  (tMs: number): CameraMotion =>
    camera(to * Math.min(1, Math.max(0, (tMs - fromMs) / 200)));

const raises = (flow: boolean): readonly Observation[] =>
  recording({
    lastsMs: 15_000,
    flow,
    bodyAt: (tMs) => lying({ thighDeg: movementsAt(tMs, { firstMs: 3000, everyMs: 3800, lastsMs: 3000, ranges: RANGES }) }),
  });
const peaks = (observations: readonly Observation[]) => runSet(specOf(legRaise), observations).result.reps.map((r) => r.peakDeg);

describe.each([
  ['with the picture motion', true],
  ['by landmarks alone', false],
])('a camera that rolls during leg raises, %s', (_, flow) => {
  test.each([
    ['at rest between two', 6300, 3],
    ['while a leg goes up', 7400, -3],
    ['at the top', 8300, 2],
  ])('%s leaves count and peaks as they were', (_when, atMs, roll) => {
    const before = peaks(raises(flow));
    const after = peaks(seenBy(raises(flow), stepAt(atMs, roll)));
    expect(before.length).toBe(RANGES.length);
    expect(after.length).toBe(RANGES.length);
    const off = after.map((peak, i) => Math.abs(peak - (before[i] as number)));
    expect(Math.max(...off)).toBeLessThan(0.2);
  });

  test('is seen live as if it had not', () => {
    const plain = runSet(specOf(legRaise), raises(flow)).views;
    const rolled = runSet(specOf(legRaise), seenBy(raises(flow), stepAt(6300, 3))).views;
    rolled.forEach(({ angleDeg, count }, i) => {
      expect(count).toBe(plain[i]?.count);
      expect(Math.abs((angleDeg ?? 0) - (plain[i]?.angleDeg ?? 0))).toBeLessThan(0.2);
    });
  });
});

test('unseen, a roll would show in the peaks: the camera is what takes it out', () => {
  const blind = seenBy(raises(true), stepAt(6300, 3)).map((seen) => ({ ...seen, camera: null }));
  const before = peaks(raises(true));
  const off = peaks(blind).map((peak, i) => Math.abs(peak - (before[i] as number)));
  expect(Math.max(...off)).toBeGreaterThan(1);
});

describe('the warning that the camera was moved', () => {
  const warnings = (cameraAt: (tMs: number) => CameraMotion) =>
    runSet(specOf(legRaise), seenBy(raises(true), cameraAt)).result.quality.warnings;

  test('comes with a roll of a degree or a shove of six pixels', () => {
    expect(warnings(stepAt(6300, 1))).toContain('camera-moved');
    expect(warnings((tMs) => camera(0, tMs > 7000 ? 6 : 0))).toContain('camera-moved');
  });
  test('does not come when it stands, sinks slowly, or is put right before the set', () => {
    expect(warnings(() => camera(0))).not.toContain('camera-moved');
    expect(warnings((tMs) => camera(tMs / 10_000, tMs / 1000))).not.toContain('camera-moved');
    expect(warnings(stepAt(200, 3))).not.toContain('camera-moved');
  });
});
