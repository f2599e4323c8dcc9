import { describe, expect, test } from 'vitest';
import { choicesIn } from '../../src/screens/choose/choices.ts';
import { planOf } from '../../src/screens/choose/plan.ts';

describe('the remembered choices', () => {
  test('what was chosen is offered again', () => {
    const chosen = { ...choicesIn(null), exercise: 'leg-raise', side: 'right', targetReps: 15, model: 'lite', head: 'left' };
    expect(choicesIn(JSON.stringify(chosen))).toEqual(chosen);
  });

  test('a value that no longer fits falls back alone', () => {
    const read = choicesIn(JSON.stringify({ exercise: 'no-such', side: 'right', targetReps: 1000, sound: false }));
    expect(read).toEqual({ ...choicesIn(null), side: 'right', sound: false });
  });

  test.each(['', '{', '[]', '"text"', 'null'])('%j gives the defaults', (text) => {
    expect(choicesIn(text)).toEqual(choicesIn(null));
  });
});

describe('the plan of a set', () => {
  test('a file that is not chosen yet gives no plan', () => {
    expect(planOf('file', choicesIn(null), null)).toBeNull();
  });

  test('the camera that was chosen is the one that is opened', () => {
    const plan = planOf('camera', { ...choicesIn(null), deviceId: 'second' }, null);
    expect(plan?.pictures).toEqual({ kind: 'camera', deviceId: 'second' });
  });
});
