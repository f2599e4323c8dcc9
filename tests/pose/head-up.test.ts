import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { findHead, headOf, headUpTurn } from '../../src/pose/head-up.ts';
import { fromTurned } from '../../src/pose/turned-picture.ts';
import { body, lying } from './body-builder.ts';

describe('the turn that brings the head up', () => {
  test.each(['left', 'right'] as const)('for a head at the %s puts it at the top of the drawn picture', (head) => {
    const size = { width: 640, height: 480 };
    // The middle of the drawn picture's upper edge is where the head must have been.
    const { x } = fromTurned({ x: 0.5, y: 0, z: 0 }, headUpTurn(head), size);
    expect(x).toBe(head === 'left' ? 0 : 640);
  });
});

describe('where the head points', () => {
  test('is where the shoulders lie, seen from the hips', () => {
    expect(headOf(lying('left'))).toBe('left');
    expect(headOf(lying('right'))).toBe('right');
  });

  test('mirroring the picture swaps it', () => {
    const at = fc.integer({ min: 0, max: 640 });
    fc.assert(
      fc.property(at, at, at, at, (ls, rs, lh, rh) => {
        fc.pre(ls + rs !== lh + rh);
        const points = (mirror: (x: number) => number) =>
          body({
            leftShoulder: [mirror(ls), 0],
            rightShoulder: [mirror(rs), 0],
            leftHip: [mirror(lh), 0],
            rightHip: [mirror(rh), 0],
          });
        expect(headOf(points((x) => 640 - x))).not.toBe(headOf(points((x) => x)));
      }),
    );
  });
});

describe('finding the head from two drawings', () => {
  test('takes the drawing in which more of the body is seen', () => {
    expect(findHead(lying('left', 0.9), lying('right', 0.4))).toBe('left');
    expect(findHead(lying('left', 0.4), lying('right', 0.9))).toBe('right');
  });

  test('does not heed a drawing that contradicts itself, however sure it is', () => {
    expect(findHead(lying('right', 0.99), lying('right', 0.3))).toBe('right');
    expect(findHead(lying('left', 0.3), lying('left', 0.99))).toBe('left');
    expect(findHead(lying('right', 0.99), lying('left', 0.99))).toBeNull();
  });

  test('needs only one of them, and says when there is none', () => {
    expect(findHead(lying('left', 0.5), null)).toBe('left');
    expect(findHead(null, lying('right', 0.5))).toBe('right');
    expect(findHead(null, null)).toBeNull();
  });
});
