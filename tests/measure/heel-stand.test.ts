import { expect, test } from 'vitest';
import { heelStand } from '../../src/exercises/heel-stand.ts';
import { bodyPoints } from '../../src/measure/leg-sample.ts';
import { inPosture } from '../../src/measure/posture.ts';
import { type BodyPose, landmarksOf, lying, movementsAt, recording, sitting, specOf, standing } from './pose-builder.ts';
import { runSet } from './set-runner.ts';

const upAt = (t: number) => movementsAt(t, { everyMs: 4000, lastsMs: 3000, ranges: [15, 12] });
const onHeels = (over: Partial<BodyPose> = {}, lift: (t: number) => number = upAt) =>
  runSet(
    { ...specOf(heelStand), side: over.side ?? 'left' },
    recording({ lastsMs: 10_000, bodyAt: (t) => standing({ ankleDeg: lift(t), ...over }), flow: true }),
  ).result;

test('two heel stands are two, each with the time the forefoot was up', () => {
  const { count, reps, quality } = onHeels();
  expect(count).toBe(2);
  expect(quality.warnings).toEqual([]);
  for (const rep of reps) {
    expect(rep.upMs).toBeGreaterThan(1500);
    expect(rep.upMs).toBeLessThanOrEqual(3000);
    expect(rep.sankAfterMs).toBeNull();
  }
  expect(Math.abs((reps[0]?.rangeDeg ?? 0) - 15)).toBeLessThan(1);
});

test('a forefoot that sinks while it is up is told, and when', () => {
  const sinking = (t: number) => {
    if (t < 2000 || t > 8000) return 0;
    if (t < 2400) return (16 * (t - 2000)) / 400;
    return t < 7600 ? 16 - (10 * (t - 2400)) / 5200 : (6 * (8000 - t)) / 400;
  };
  const [rep] = onHeels({}, sinking).reps;
  expect(rep?.flags).toContain('sinking');
  // A third of 16 degrees is gone 2.8 s after the top.
  expect(Math.abs((rep?.sankAfterMs ?? 0) - 3100)).toBeLessThan(500);
});

test.each(['left', 'right'] as const)('facing %s makes no difference', (side) => {
  expect(onHeels({ side, facing: side }).reps.map((r) => Math.round(r.rangeDeg))).toEqual(
    onHeels().reps.map((r) => Math.round(r.rangeDeg)),
  );
});

test('who stands neither sits nor lies, and the other way round', () => {
  const placed = (body: BodyPose) =>
    (['upright', 'lying', 'standing'] as const).filter((p) => inPosture(bodyPoints(landmarksOf(body), 'left'), p));
  expect(placed(standing())).toEqual(['standing']);
  expect(placed(sitting())).toEqual(['upright']);
  expect(placed(lying())).toEqual(['lying']);
});
