import { expect, test } from 'vitest';
import { footTap } from '../../src/exercises/foot-tap.ts';
import { cameraTurn } from '../../src/measure/camera-turn.ts';
import { sampleOf } from '../../src/measure/leg-sample.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { finishSet, startSet, stepSet } from '../../src/measure/set.ts';
import { LANDMARK, type Landmark } from '../../src/pose/landmarks.ts';
import { ms, px } from '../../src/units.ts';
import { type BodyPose, landmarksOf, SIZE, sitting } from './pose-builder.ts';

const TRUNK = 1.2;
const PARTS = ['Shoulder', 'Hip', 'Knee', 'Ankle'] as const;

/** A sitting body whose far side the model sees ahead of the near one by this share of the trunk, each of four points. */
function seen(body: BodyPose, share: number): Observation {
  const forward = (body.facing === 'right' ? 1 : -1) * share * TRUNK * body.thighPx;
  const far = body.side === 'left' ? 'right' : 'left';
  const landmarks = landmarksOf(body).map((p, i, all): Landmark => {
    const part = PARTS.find((name) => LANDMARK[`${far}${name}`] === i);
    const near = part && all[LANDMARK[`${body.side}${part}`]];
    return near ? { ...p, x: px(near.x + forward) } : p;
  });
  return { tMs: ms(0), landmarks, motion: null, camera: null, brightness: 100 };
}

const turnOf = (body: BodyPose, share: number): number | null => cameraTurn([sampleOf(seen(body, share), body.side)], 'upright');

test('the turn has the sign of where the far side shows, whichever way the person faces and however near they are', () => {
  for (const facing of ['left', 'right'] as const) {
    for (const thighPx of [60, 120]) {
      const body = sitting({ facing, side: facing, thighPx });
      expect(turnOf(body, 0.02)).toBeCloseTo(0, 6);
      // From the formula: 2.52 * 98 / sqrt(98 + 8).
      expect(turnOf(body, 0.265)).toBeCloseTo(23.99, 1);
      expect(turnOf(body, -0.225)).toBeCloseTo(-23.99, 1);
    }
  }
});

test('a set seen from too far off the side is refused: no repetition, no number, and the reason', () => {
  const measured = (share: number) => {
    let state = startSet({ exercise: footTap, side: 'left', size: SIZE, targetReps: null, endsItself: false });
    for (let i = 0; i < 150; i++) {
      const phase = i < 45 ? 0 : ((i - 45) % 45) / 45;
      const body = sitting({ ankleDeg: 14 * Math.sin(Math.PI * phase) ** 2 });
      state = stepSet(state, { ...seen(body, share), tMs: ms((i * 1000) / 30) }).state;
    }
    return finishSet(state);
  };
  const side = measured(0.02);
  expect(side.count).toBeGreaterThanOrEqual(2);
  expect(side.quality.warnings).not.toContain('camera-turned');
  expect(measured(0.2).quality.warnings).toContain('camera-turned');
  const aside = measured(0.5);
  expect(aside).toMatchObject({ count: 0, reps: [], summary: null, quality: { warnings: ['camera-too-turned'] } });
});
