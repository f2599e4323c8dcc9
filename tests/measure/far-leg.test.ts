import { describe, expect, test } from 'vitest';
import { legRaise } from '../../src/exercises/leg-raise.ts';
import { isFarLeg } from '../../src/measure/near-leg.ts';
import { LANDMARK, type Landmark } from '../../src/pose/landmarks.ts';
import { px } from '../../src/units.ts';
import { landmarksOf, lying, movementsAt, recording, specOf } from './pose-builder.ts';
import { runSet } from './set-runner.ts';

const raisedBy = (t: number) => movementsAt(t, { everyMs: 3000, lastsMs: 2200, ranges: [80, 80] });
const raises = recording({ lastsMs: 8000, bodyAt: (t) => lying({ thighDeg: raisedBy(t) }), flow: true });
const resultOf = (observations: typeof raises) => runSet(specOf(legRaise), observations).result;

/** Left and right are the other way round: each point where the other side's was. */
const swapped = (landmarks: readonly Landmark[]): readonly Landmark[] =>
  landmarks.map((_, i) => landmarks[i < 7 ? i : i % 2 === 1 ? i + 1 : i - 1] as Landmark);
/** The near leg's points lie on the other one, which rests on the mat; depth and names stay. */
const onTheMat = (landmarks: readonly Landmark[]): readonly Landmark[] => {
  const flat = landmarksOf(lying());
  return landmarks.map((p, i) =>
    i === LANDMARK.leftKnee || i === LANDMARK.leftAnkle ? { ...p, x: px(flat[i]?.x ?? 0), y: px(flat[i]?.y ?? 0) } : p,
  );
};
const changed = (when: (tMs: number) => boolean, change: (landmarks: readonly Landmark[]) => readonly Landmark[]) =>
  raises.map((o) => (o.landmarks && when(o.tMs) ? { ...o, landmarks: change(o.landmarks) } : o));

describe('a leg that is the one turned away', () => {
  test('is told by the model\u2019s depth', () => {
    expect(isFarLeg(landmarksOf(lying()), 'left')).toBe(false);
    expect(isFarLeg(landmarksOf(lying()), 'right')).toBe(true);
    expect(isFarLeg(landmarksOf(lying({ side: 'right', facing: 'right' })), 'right')).toBe(false);
  });

  test('is not measured at all, and the reason is named', () => {
    const far = resultOf(changed(() => true, swapped));
    expect(far).toMatchObject({ count: 0, reps: [], framesUsed: 0, summary: null, quality: { warnings: ['far-leg'] } });
  });
});

describe('legs that the model takes for each other at the top of a raise', () => {
  const top = (t: number) => raisedBy(t) > 70;
  test.each([
    ['names exchanged', swapped],
    ['points fallen on the resting leg', onTheMat],
  ] as const)('%s: not used, named, and the repetition kept in doubt', (_, change) => {
    const clean = resultOf(raises);
    const found = resultOf(changed((t) => t < 3500 && top(t), change));
    expect(found.count).toBe(clean.count);
    expect(found.quality.warnings).toContain('points-jumped');
    expect(found.reps.map((r) => r.flags.includes('doubtful'))).toEqual([true, false]);
    expect(clean.reps.some((r) => r.flags.includes('doubtful'))).toBe(false);
    expect(clean.quality.warnings).toEqual([]);
  });
});
