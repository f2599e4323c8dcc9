import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Affected,
  copied,
  itemsOf,
  keptLeg,
  type LegChoice,
  type LegsDraft,
  legsOf,
  newLegs,
  withChange,
  withChoice,
} from '../../src/screens/plan/legs-draft.ts';
import { line } from '../dose/plan.ts';

const reps = (repsASet: number) => ({ start: { setsADay: 1, repsASet, holdS: 0 } });
const choices = fc.constantFrom<LegChoice>('left', 'right', 'same', 'apart');
const side = fc.constantFrom('left' as const, 'right' as const);
const affected = fc.constantFrom<Affected>('left', 'right', 'both');

/** One thing done in the editor. */
type Step = (draft: LegsDraft) => LegsDraft;
const step: fc.Arbitrary<Step> = fc.oneof(
  fc.tuple(choices, affected).map(
    ([choice, leg]): Step =>
      (draft) =>
        withChoice(draft, choice, leg),
  ),
  fc.tuple(side, fc.integer({ min: 1, max: 20 })).map(
    ([leg, n]): Step =>
      (draft) =>
        withChange(draft, leg, reps(n)),
  ),
  side.map(
    (leg): Step =>
      (draft) =>
        copied(draft, leg),
  ),
);
const pressed = (steps: readonly Step[], from = newLegs('foot-tap', 'left')) => steps.reduce((draft, next) => next(draft), from);
const values = ({ id: _, sides: __, ...rest }: ReturnType<typeof itemsOf>[number]) => rest;

describe('whatever is pressed', () => {
  test('each leg is in one line at most, ids differ, none is made anew', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), (steps) => {
        const first = newLegs('foot-tap', 'left');
        const draft = pressed(steps, first);
        const items = itemsOf(draft);
        const sides = items.flatMap((item) => item.sides);
        expect(new Set(sides).size).toBe(sides.length);
        expect(new Set(items.map(({ id }) => id)).size).toBe(items.length);
        expect([draft.lines.left.id, draft.lines.right.id]).toEqual([first.lines.left.id, first.lines.right.id]);
      }),
    );
  });

  test('parting the legs changes no dose, and what is kept is read again as it was', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), affected, (steps, leg) => {
        const same = withChoice(pressed(steps), 'same', leg);
        const apart = itemsOf(withChoice(same, 'apart', leg));
        expect(apart.map(({ sides }) => sides)).toEqual([['left'], ['right']]);
        for (const item of apart) expect(values(item)).toEqual(values(itemsOf(same)[0] as (typeof apart)[number]));
        const read = legsOf(apart);
        expect(read && itemsOf(read)).toEqual(apart);
      }),
    );
  });

  test('both the same has what the leg had that was named before', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 12 }), affected, (steps, leg) => {
        const apart = withChoice(pressed(steps), 'apart', leg);
        const kept = apart.lines[keptLeg(apart, leg)];
        expect(itemsOf(withChoice(apart, 'same', leg)).map(values)).toEqual([values({ ...kept, sides: [] })]);
      }),
    );
  });
});

test('the affected leg’s values stay; else the smaller dose, else the left one', () => {
  const left = line('foot-tap', { sides: ['left'], ...reps(10) }, 1);
  const right = line('foot-tap', { sides: ['right'], ...reps(6) }, 2);
  const draft = legsOf([left, right]) as LegsDraft;
  expect([keptLeg(draft, 'left'), keptLeg(draft, 'right'), keptLeg(draft, 'both')]).toEqual(['left', 'right', 'right']);
  expect(keptLeg(copied(draft, 'right'), 'both')).toBe('left');
  expect(keptLeg({ ...draft, choice: 'left' }, 'right')).toBe('left');
});

test('a leg that is put aside has its own dose again when it comes back', () => {
  const apart = withChange(withChoice(newLegs('foot-tap', 'both'), 'apart', 'both'), 'right', reps(7));
  const alone = withChange(withChoice(apart, 'left', 'both'), 'left', reps(9));
  expect(itemsOf(alone).map((item) => [item.sides, item.start.repsASet])).toEqual([[['left'], 9]]);
  expect(itemsOf(withChoice(alone, 'apart', 'both')).map((item) => item.start.repsASet)).toEqual([9, 7]);
});
