import { expect, test } from 'vitest';
import { noResultWords } from '../../src/cli/no-result-words.ts';
import type { SetResult } from '../../src/measure/set-result.ts';
import { deg } from '../../src/units.ts';
import { result } from '../record/set-builders.ts';

const asked = { clip: 'clip.mp4', exercise: 'foot-tap', model: 'full' } as const;
const nothing = (quality: Partial<SetResult['quality']>): SetResult => ({
  ...result([]),
  framesUsed: 0,
  quality: { cameraTurnDeg: null, warnings: [], ...quality },
});

test.each([
  {
    name: 'a camera turned too far',
    of: nothing({ cameraTurnDeg: deg(-41), warnings: ['camera-too-turned'] }),
    says: /turned 41 degrees off the side view/,
  },
  { name: 'the far leg', of: nothing({ warnings: ['far-leg'] }), says: /is the one turned away from the camera/ },
  { name: 'the other leg held up', of: nothing({ warnings: ['other-leg-up'] }), says: /leg is seen held up/ },
  { name: 'no leg', of: nothing({}), says: /as foot-tap needs it\.$/ },
])('of $name one sentence says what is wrong and what to do', ({ of, says }) => {
  expect(noResultWords(of, asked)).toMatch(says);
});

test('without stickers it is they that are missed', () => {
  expect(noResultWords(nothing({}), { ...asked, model: 'stickers' })).toMatch(/all three stickers/);
});

test('a set in which nothing moved is measured all the same', () => {
  expect(noResultWords({ ...nothing({}), framesUsed: 200 }, asked)).toBeNull();
});
