import { describe, expect, test } from 'vitest';
import { footTap } from '../../src/exercises/foot-tap.ts';
import { kneeStraighten } from '../../src/exercises/knee-straighten.ts';
import { legRaise } from '../../src/exercises/leg-raise.ts';
import type { Observation } from '../../src/measure/observation.ts';
import { finishSet, markOnset, startSet, stepSet } from '../../src/measure/set.ts';
import { deg, type Ms, ms } from '../../src/units.ts';
import { type BodyPose, lying, mirrored, movementsAt, recording, sitting, specOf } from './pose-builder.ts';
import { runSet } from './set-runner.ts';

const raiseAt = (t: number) => movementsAt(t, { everyMs: 4000, lastsMs: 3000, ranges: [40, 50, 50] });
const raises = (over: (t: number) => Partial<BodyPose> = () => ({}), noisePx = 0) =>
  recording({ lastsMs: 14_000, bodyAt: (t) => lying({ thighDeg: raiseAt(t), ...over(t) }), noisePx });

/** The set with symptoms told at the first frame from `atMs` on. */
function withOnset(observations: readonly Observation[], atMs: number, exercise = legRaise) {
  let state = startSet(specOf(exercise));
  let markedMs: Ms | null = null;
  const live: string[][] = [];
  for (const seen of observations) {
    const step = stepSet(state, seen);
    state = step.state;
    live.push(...step.events.flatMap((e) => (e.kind === 'rep' ? [[...e.rep.flags]] : [])));
    if (markedMs === null && seen.tMs >= atMs) {
      markedMs = seen.tMs;
      state = markOnset(state, seen.tMs);
    }
  }
  return { state, live, result: finishSet(state), markedMs };
}

describe('the knee limit', () => {
  const bent = raises((t) => ({ kneeDeg: t > 5500 && t < 8500 ? Math.min(25, raiseAt(t)) : 2 }));
  const flagsWith = (kneeLimitDeg?: number) => {
    const spec = { ...specOf(legRaise), ...(kneeLimitDeg === undefined ? {} : { kneeLimitDeg: deg(kneeLimitDeg) }) };
    return runSet(spec, bent).result;
  };

  test.each([
    { limit: undefined, held: 15, flagged: [false, true, false] },
    { limit: 10, held: 10, flagged: [false, true, false] },
    { limit: 30, held: 30, flagged: [false, false, false] },
  ])('of $limit decides which repetition is flagged, and stands in the result', ({ limit, held, flagged }) => {
    const result = flagsWith(limit);
    expect(result.kneeLimitDeg).toBe(held);
    expect(result.reps.map((r) => r.flags.includes('knee-bent'))).toEqual(flagged);
  });

  test('plays no part in other exercises', () => {
    const bodyAt = (t: number) => sitting({ ankleDeg: raiseAt(t) / 4 });
    expect(runSet(specOf(footTap), recording({ lastsMs: 8000, bodyAt })).result.kneeLimitDeg).toBeNull();
  });
});

describe('the foot at the peak of a leg raise', () => {
  const FEET = [-20, 0, 15];
  const footOf = (t: number) => FEET[Math.max(0, Math.floor((t - 1500) / 4000))] ?? 0;

  test('is told for each repetition, with its own error, whichever way the person lies', () => {
    const seen = raises((t) => ({ ankleDeg: footOf(t) }), 0.5);
    for (const { result } of [runSet(specOf(legRaise), seen), runSet(specOf(legRaise, 'right'), seen.map(mirrored))]) {
      expect(result.reps).toHaveLength(3);
      result.reps.forEach((rep, i) => {
        expect(Math.abs((rep.footDeg as number) - (FEET[i] as number))).toBeLessThan(1.5);
        expect(rep.footUncertaintyDeg).toBe(12);
      });
    }
  });

  test('is not told when the foot was outside of the picture', () => {
    const shifted = raises(() => ({ shiftX: 0 })).map((seen) => ({
      ...seen,
      landmarks: seen.landmarks?.map((p, i) => (i === 31 && seen.tMs > 5500 ? { ...p, y: -20 as typeof p.y } : p)) ?? null,
    }));
    const feet = runSet(specOf(legRaise), shifted).result.reps.map((r) => [r.footDeg === null, r.footUncertaintyDeg]);
    expect(feet).toEqual([
      [false, 12],
      [true, null],
      [true, null],
    ]);
  });

  test('is not told in other exercises', () => {
    const bodyAt = (t: number) => sitting({ ankleDeg: raiseAt(t) / 4 });
    const { reps } = runSet(specOf(footTap), recording({ lastsMs: 8000, bodyAt })).result;
    expect(reps.length).toBeGreaterThan(0);
    for (const rep of reps) expect(rep.footDeg).toBeNull();
  });
});

describe('the onset of symptoms', () => {
  /** In the second raise, on its way up: a quarter of the way to 50 degrees in time is half the way in height. */
  const AT = 1500 + 4000 + 750;
  // The rest before slow movements, from which angles count, may be read too high by a thirtieth of their range.
  const seen = raises();

  test('is the moment and the angle then, from the smoothed set', () => {
    const { result, markedMs } = withOnset(seen, AT);
    expect(result.onset?.tMs).toBe(markedMs);
    expect(Math.abs((result.onset?.angleDeg as number) - raiseAt(markedMs as number))).toBeLessThan(50 / 30);
  });

  test('flags what goes on past it, live and afterwards, and nothing before', () => {
    const { result, live } = withOnset(seen, AT);
    expect(result.reps.map((r) => r.flags)).toEqual([[], ['past-onset'], ['past-onset']]);
    expect(live).toEqual([[], ['past-onset'], ['past-onset']]);
  });

  test('reached again, but not passed by more than the error, is not flagged', () => {
    // The top of the second raise is the onset; the third goes equally far.
    const { result } = withOnset(seen, 1500 + 4000 + 1500);
    expect(result.reps[2]?.flags).toEqual([]);
    const farther = raises((t) => ({ thighDeg: t > 9000 ? 1.3 * raiseAt(t) : raiseAt(t) }));
    expect(withOnset(farther, 1500 + 4000 + 1500).result.reps.map((r) => r.flags)).toEqual([[], [], ['past-onset']]);
  });

  test('leaves a camera that lies level with the hip out, as the angles do', () => {
    const tilted = raises((t) => ({ thighDeg: raiseAt(t) + 8 }));
    const { result, markedMs } = withOnset(tilted, AT);
    expect(Math.abs((result.onset?.angleDeg as number) - raiseAt(markedMs as number))).toBeLessThan(50 / 30);
  });

  test('is told once: a second word changes nothing', () => {
    const { state } = withOnset(seen.slice(0, 240), AT);
    expect(markOnset(state, ms(7900))).toEqual(state);
  });

  test('has no angle when the leg was not seen about then', () => {
    const hidden = seen.map((o) => (Math.abs(o.tMs - AT) < 1500 ? { ...o, landmarks: null } : o));
    expect(withOnset(hidden, AT).result).toMatchObject({ onset: { angleDeg: null } });
    expect(withOnset(hidden, AT).result.reps.flatMap((r) => r.flags)).not.toContain('past-onset');
  });

  test('is null when nobody tells of it', () => {
    expect(runSet(specOf(legRaise), seen).result.onset).toBeNull();
  });

  test('in an exercise whose angle falls, past is lower', () => {
    const straighten = recording({ lastsMs: 14_000, bodyAt: (t) => sitting({ kneeDeg: 90 - raiseAt(t) }) });
    const { result } = withOnset(straighten, AT, kneeStraighten);
    expect(result.reps.map((r) => r.flags)).toEqual([[], ['past-onset'], ['past-onset']]);
  });

  test('told with the leg down again has no angle, and flags nothing', () => {
    // The second raise ends at 8.5 s, the third begins at 9.5 s.
    const { result, live } = withOnset(raises(), 9000);
    expect(result.onset).toMatchObject({ angleDeg: null });
    expect(result.reps.flatMap((r) => r.flags)).toEqual([]);
    expect(live.flat()).toEqual([]);
  });

  test('told with the leg up in a set that is stopped there keeps its angle', () => {
    const cut = raises().filter(({ tMs }) => tMs < 11_100);
    const { result, markedMs } = withOnset(cut, 11_000);
    expect(Math.abs((result.onset?.angleDeg as number) - raiseAt(markedMs as number))).toBeLessThan(2);
  });
});
