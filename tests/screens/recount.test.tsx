// @vitest-environment jsdom
import { cleanup, screen } from '@testing-library/react';
import { afterEach, expect, test } from 'vitest';
import type { MeasuredRep } from '../../src/measure/set-result.ts';
import { fakeServices } from './fake-services.ts';
import { aRep, aSet } from './fake-sets.ts';
import { shownAt } from './shown.tsx';

afterEach(cleanup);

const small = aRep(2, { complete: false, flags: ['partial', 'recounted'] });

function shown(reps: readonly MeasuredRep[], notFound?: number) {
  const set = aSet(reps);
  if (!set.result) throw new Error('a set requires a result, got none');
  const result = { ...set.result, reps, ...(notFound === undefined ? {} : { notFound }) };
  shownAt('/set/set-1', fakeServices([{ ...set, result }]).services);
}

test('one that was counted and is small beside the others is told in a sentence', async () => {
  shown([aRep(1), small, aRep(3)]);
  expect(await screen.findByText('3 counted while you moved, 2 in the end')).toBeTruthy();
  expect(screen.getByText(/^1 was less than about half as far as you usually went/)).toBeTruthy();
  expect(screen.getByText(/was counted at first$/)).toBeTruthy();
});

test('each reason has its own sentence', async () => {
  const gap = aRep(3, { complete: false, flags: ['partial', 'tracking-gap', 'recounted'] });
  const unfinished = aRep(4, { complete: false, flags: ['partial', 'unfinished', 'recounted'] });
  shown([aRep(1, { flags: ['recounted'] }), small, gap, unfinished], 2);
  expect(await screen.findByText('5 counted while you moved, 1 in the end')).toBeTruthy();
  for (const said of [/^In 1 the leg was lost/, /^1 was not over/, /^2 were not sure any more/, /^1 was found only/]) {
    expect(screen.getByText(said)).toBeTruthy();
  }
});

test('where the counts agree nothing is said', async () => {
  shown([aRep(1), aRep(2)]);
  await screen.findByText('Every repetition');
  expect(screen.queryByText(/counted while you moved/)).toBeNull();
});
