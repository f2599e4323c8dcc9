import { expect, test } from 'vitest';
import { footTap } from '../../src/exercises/foot-tap.ts';
import { legRaise } from '../../src/exercises/leg-raise.ts';
import { lying, recording, sitting, specOf } from './pose-builder.ts';
import { runSet } from './set-runner.ts';

/** There and back in `wayMs` each, held for `holdMs` at the top, every `everyMs`; 0 to 1. */
const heldAt = (t: number, holdMs: number, wayMs: number) => {
  const at = (t - 1500) % (2 * wayMs + holdMs + 1500);
  if (t < 1500 || at > 2 * wayMs + holdMs) return 0;
  const way = at < wayMs ? at : at > wayMs + holdMs ? 2 * wayMs + holdMs - at : wayMs;
  return (1 - Math.cos((Math.PI * way) / wayMs)) / 2;
};

test.each([0, 300, 1000, 5000])('raises held for %d ms are told to be, within 0.15 s', (holdMs) => {
  const seen = recording({
    lastsMs: 1500 + 3 * (2 * 1200 + holdMs + 1500),
    bodyAt: (t) => lying({ thighDeg: 45 * heldAt(t, holdMs, 1200) }),
    noisePx: 0.3,
    flow: true,
  });
  const { result, state } = runSet(specOf(legRaise), seen);
  expect(result.reps).toHaveLength(3);
  for (const rep of result.reps) expect(Math.abs(rep.holdMs - holdMs)).toBeLessThan(150);
  for (const rep of state.reps) expect(Math.abs(rep.holdMs - holdMs)).toBeLessThan(250);
});

test.each([0, 200, 2000])('taps held for %d ms are told to be, within 0.1 s', (holdMs) => {
  const seen = recording({
    lastsMs: 1500 + 3 * (2 * 400 + holdMs + 1500),
    bodyAt: (t) => sitting({ ankleDeg: 14 * heldAt(t, holdMs, 400) }),
    flow: true,
  });
  const { result } = runSet(specOf(footTap), seen);
  expect(result.reps).toHaveLength(3);
  for (const rep of result.reps) expect(Math.abs(rep.holdMs - holdMs)).toBeLessThan(100);
});
