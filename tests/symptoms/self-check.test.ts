import { describe, expect, test } from 'vitest';
import type { SelfCheckFinding } from '../../src/symptoms/self-check.ts';
import { selfChecksDue, worseThanLast } from '../../src/symptoms/self-check-change.ts';
import { dayOf, selfCheck } from './told.ts';

const on = (n: number, finding: SelfCheckFinding, side: 'left' | 'right' = 'left') => selfCheck(n, 9, [{ ...finding, side }]);

// What is checked is textbook practice (second-hand); from where on it is worse is chosen, nothing published was found.
describe('a self-check against the last', () => {
  test.each([
    ['big-toe', 'as-strong', 'easily-pushed-down', true],
    ['big-toe', 'easily-pushed-down', 'cannot-lift', true],
    ['big-toe', 'cannot-lift', 'as-strong', false],
    ['big-toe', 'as-strong', 'as-strong', false],
    ['big-toe', 'as-strong', 'not-answered', false],
    ['heel-walk', 10, 7, true],
    ['heel-walk', 10, 8, false],
    ['heel-walk', 4, 10, false],
    ['heel-stand', 20, 14, true],
    ['heel-stand', 20, 15, false],
    ['heel-stand', 5, 2, true],
    ['heel-stand', 5, 3, false],
    ['foot-slap', 'no', 'yes', true],
    ['foot-slap', 'yes', 'yes', false],
    ['forefoot-sinks', 'no', 'yes', true],
    ['forefoot-sinks', 'yes', 'no', false],
  ] as const)('%s from %s to %s is worse: %s', (check, before, now, worse) => {
    const last = on(1, { check, found: before } as SelfCheckFinding);
    const next = on(8, { check, found: now } as SelfCheckFinding);
    expect(worseThanLast(next, [last, next])).toEqual(worse ? [{ check, side: 'left', before, now }] : []);
  });

  test('skips a time without an answer, and the other leg', () => {
    const now = on(15, { check: 'big-toe', found: 'cannot-lift' });
    const silent = on(8, { check: 'big-toe', found: 'not-answered' });
    const strong = { check: 'big-toe', found: 'as-strong' } as const;
    expect(worseThanLast(now, [on(1, strong), silent]).length).toBe(1);
    expect(worseThanLast(now, [on(1, strong, 'right')])).toEqual([]);
  });

  test('is due a week after the last answer of each leg', () => {
    const plan = { checks: ['big-toe'], sides: ['left', 'right'], everyDays: 7 } as const;
    const left = on(1, { check: 'big-toe', found: 'as-strong' });
    const right = on(2, { check: 'big-toe', found: 'as-strong' }, 'right');
    expect(selfChecksDue(plan, [], dayOf(1))).toEqual(['big-toe']);
    expect(selfChecksDue(plan, [left], dayOf(2))).toEqual(['big-toe']);
    expect(selfChecksDue(plan, [left, right], dayOf(7))).toEqual([]);
    expect(selfChecksDue(plan, [left, right], dayOf(8))).toEqual(['big-toe']);
    expect(selfChecksDue(plan, [left, on(2, { check: 'big-toe', found: 'not-answered' }, 'right')], dayOf(3))).toEqual([
      'big-toe',
    ]);
  });
});
