import { describe, expect, test } from 'vitest';
import { glideLimit } from '../../src/symptoms/glide-limit.ts';
import { deg } from '../../src/units.ts';
import { angleMark, dayOf } from './told.ts';

const [morning, evening] = ['00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000002'];

describe('how high a leg may be held', () => {
  test('is where symptoms began in the newest session: the middle of its trials', () => {
    const marks = [
      angleMark(3, 17, { sessionId: evening, trial: 1, angleDeg: deg(44) }),
      angleMark(3, 17.1, { sessionId: evening, trial: 2, angleDeg: deg(49) }),
      angleMark(3, 17.2, { sessionId: evening, trial: 3, angleDeg: deg(45) }),
      angleMark(2, 9, { sessionId: morning, angleDeg: deg(60) }),
    ];
    expect(glideLimit(marks, 'left')).toEqual({ elevationDeg: 45, day: dayOf(3) });
    expect(glideLimit(marks.toReversed(), 'left')).toEqual({ elevationDeg: 45, day: dayOf(3) });
  });

  test('takes either zero as the elevation, but never mixes them', () => {
    const own = angleMark(3, 9, { zero: 'own', angleDeg: deg(52) });
    const rest = angleMark(3, 10, { zero: 'rest', angleDeg: deg(46) });
    expect(glideLimit([own], 'left')?.elevationDeg).toBe(52);
    expect(glideLimit([own, rest], 'left')?.elevationDeg).toBe(46);
  });

  test('is not known from the other leg, another exercise, or where the movement ended', () => {
    const others = [
      angleMark(3, 9, { side: 'right' }),
      angleMark(3, 9, { exercise: 'knee-straighten' }),
      angleMark(3, 9, { mark: 'limit' }),
    ];
    expect(glideLimit(others, 'left')).toBeNull();
    expect(glideLimit([], 'left')).toBeNull();
  });
});
