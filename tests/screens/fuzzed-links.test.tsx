// @vitest-environment jsdom
import { act, cleanup } from '@testing-library/react';
import fc from 'fast-check';
import { afterEach, expect, test, vi } from 'vitest';
import { FUZZ_MS, FUZZ_RUNS } from '../record/fuzzed-import.ts';
import { fakeServices } from './fake-services.ts';
import { shownAt } from './shown.tsx';

afterEach(() => {
  cleanup();
  vi.restoreAllMocks();
});

const KNOWN = [
  '/take',
  '/take/',
  '/set',
  '/compare',
  '/person',
  '/people',
  '/questions',
  '/today/ask',
  '/today/go',
  '/by-hand',
  '/count',
  '/feel/before',
  '/feel/after',
  '/choose',
  '/plan',
  '/review',
  '/self-check',
  '/send',
  '/bring',
  '/run',
  '/lock',
  '/stored',
  '/urgent',
] as const;
const piece = fc.oneof(
  fc.constantFrom(
    '__proto__',
    'constructor',
    'toString',
    '..',
    '.',
    '%',
    '%E0%A4%A',
    '%00',
    '%2e%2e%2f',
    '<img src=x onerror=alert(1)>',
    '=1+1',
    '\u202e',
    '👩🏽',
    'null',
    'undefined',
    'NaN',
    '1e999',
    'left',
    'foot-tap',
    'x'.repeat(5000),
    '/'.repeat(300),
    '?a=b',
    '#',
    '*',
    ':id',
    '(.*)+',
    '00000000-0000-4000-8000-000000000001',
  ),
  fc.string({ maxLength: 30 }),
  fc.string({ unit: 'binary', maxLength: 10 }),
);
const anyAddress = fc
  .tuple(fc.option(fc.constantFrom(...KNOWN)), fc.array(piece, { maxLength: 4 }))
  .map(([known, pieces]) => [known ?? '', ...pieces].join('/'));

test(
  'no link of the app, however damaged, throws, stores anything, or leaves the page empty',
  async () => {
    const rejected: unknown[] = [];
    const onRejected = (reason: unknown) => rejected.push(reason);
    process.on('unhandledRejection', onRejected);
    const complained = vi.spyOn(console, 'error').mockImplementation(() => undefined);
    const { services, entries } = fakeServices();
    const { container } = shownAt('/', services);
    try {
      await fc.assert(
        fc.asyncProperty(anyAddress, async (address) => {
          await act(async () => {
            window.location.hash = address;
            window.dispatchEvent(new HashChangeEvent('hashchange'));
            await new Promise((resolve) => setTimeout(resolve));
          });
          if ((container.textContent ?? '').trim() === '') throw new Error('the page is empty');
          if (container.querySelector('img[onerror], script')) throw new Error('markup came to life');
          if (complained.mock.calls.length > 0) throw new Error(String(complained.mock.calls[0]));
          if (rejected.length > 0) throw rejected[0];
        }),
        { numRuns: FUZZ_RUNS, endOnFailure: true },
      );
    } finally {
      process.off('unhandledRejection', onRejected);
    }
    expect(entries).toEqual([]);
  },
  FUZZ_MS * 3,
);
