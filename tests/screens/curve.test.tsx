// @vitest-environment jsdom
import { cleanup, screen } from '@testing-library/react';
import { afterEach, expect, test } from 'vitest';
import { deg, ms } from '../../src/units.ts';
import { fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { shownAt } from './shown.tsx';

afterEach(cleanup);

const set = aSet([aRep(1), aRep(2, { complete: false })]);
const curve = { tMs: [0, 1000, 2000, 3000, 4000].map(ms), angleDeg: [deg(0), deg(5), null, deg(7), deg(8)] };

test('the curve of a set breaks where nothing was measured, and rises with the angle', async () => {
  const { services } = fakeServices([{ ...set, result: set.result && { ...set.result, curve } }]);
  shownAt('/set/set-1', services);
  const drawn = await screen.findByRole('img', { name: /Angle over time/ });
  const path = drawn.querySelector('.curve-line')?.getAttribute('d') ?? '';
  const pieces = path.split('M').filter((piece) => piece !== '');
  const heights = pieces.map((piece) => piece.split('L').map((point) => Number(point.split(',')[1])));
  expect(heights.map((piece) => piece.length)).toEqual([2, 2]);
  const [first, second, third, fourth] = heights.flat();
  expect([second, third, fourth].every((y, i) => Number(y) < Number([first, second, third][i]))).toBe(true);
});

test('each repetition is marked, told apart by its look, and angles and seconds are written at their axes', async () => {
  const { services } = fakeServices([{ ...set, result: set.result && { ...set.result, curve } }]);
  shownAt('/set/set-1', services);
  const drawn = await screen.findByRole('img', { name: /Angle over time/ });
  const looks = [...drawn.querySelectorAll('.rep-mark')].map((mark) => mark.getAttribute('data-look'));
  expect(looks).toEqual(['complete', 'partial']);
  const written = [...drawn.querySelectorAll('.axis-tick')].map(({ textContent }) => textContent);
  expect(written).toContain('0°');
  expect(written).toContain('4 s');
});
