import { expect, test } from 'vitest';
import type { GlideCycle } from '../../src/reps/glide-coordination.ts';
import { heedCycle, NO_FEEDBACK } from '../../src/reps/glide-feedback.ts';
import { deg, ms } from '../../src/units.ts';

type Kind = 'slide' | 'tension' | NonNullable<GlideCycle['reason']>;

const cycle = (kind: Kind): GlideCycle => {
  const clear = kind === 'slide' || kind === 'tension';
  return {
    startMs: ms(0),
    endMs: ms(2500),
    pattern: clear ? kind : 'unclear',
    phaseDeg: clear ? deg(kind === 'slide' ? 0 : 180) : null,
    certainty: clear ? 1 : 0,
    footRangeDeg: null,
    headRangeDeg: null,
    reason: clear ? null : kind,
  };
};

/** What is told after each cycle, one every `everyS` seconds. */
function told(kinds: readonly Kind[], everyS = 3): readonly (string | null)[] {
  let state = NO_FEEDBACK;
  return kinds.map((kind, i) => {
    const [next, fault] = heedCycle(state, cycle(kind), ms(i * everyS * 1000));
    state = next;
    return fault;
  });
}

const W = 'wrong';
test.each<readonly [string, readonly Kind[], readonly (string | null)[]]>([
  ['slides are never told of', ['slide', 'slide', 'slide'], [null, null, null]],
  ['one wrong cycle is a slip', ['tension', 'slide', 'tension', 'slide'], [null, null, null, null]],
  ['two in a row are told', ['slide', 'tension', 'tension'], [null, null, W]],
  [
    'and once only, however long it goes on',
    ['tension', 'tension', 'tension', 'tension', 'tension'],
    [null, W, null, null, null],
  ],
  [
    'not within half a minute, though it was right between',
    ['tension', 'tension', 'slide', 'tension', 'tension'],
    [null, W, null, null, null],
  ],
  ['two heads that stay still are told', ['head-still', 'head-still', 'head-still'], [null, 'head-still', null]],
  ['two different reasons are no row', ['head-still', 'foot-still', 'head-hidden'], [null, null, null]],
  ['a cycle between the two ends a row', ['tension', 'between', 'tension', 'between'], [null, null, null, null]],
  ['between is never told', ['between', 'between', 'between'], [null, null, null]],
  ['wrong and trouble are each told', ['tension', 'tension', 'foot-hidden', 'foot-hidden'], [null, W, null, 'foot-hidden']],
])('%s', (_, kinds, expected) => expect(told(kinds)).toEqual(expected));

test('told again half a minute later, when it has been right since', () => {
  const kinds: readonly Kind[] = ['tension', 'tension', 'slide', 'tension', 'tension', 'tension'];
  expect(told(kinds, 12)).toEqual([null, W, null, null, W, null]);
});

test('never again before it has been right, after however long', () => {
  expect(told(Array(20).fill('tension'), 10).filter((x) => x !== null)).toEqual([W]);
  expect(told(Array(20).fill('head-hidden'), 10).filter((x) => x !== null)).toEqual(['head-hidden']);
});
