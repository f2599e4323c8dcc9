import { expect, test } from 'vitest';
import type { ClipOutcome } from '../../../scripts/accuracy/clip-outcome.ts';
import { repeatabilityOf } from '../../../scripts/accuracy/repeatability.ts';
import { clip, trueRep } from './truth-builder.ts';

/** A set of three taps, all with this error. */
function filmed(errorDeg: number, repeats: string | undefined): ClipOutcome {
  const built = clip('foot-tap', [trueRep(1000, 2000, 12)]);
  const rep = { trueRangeDeg: 12, rangeErrorDeg: errorDeg, peakErrorDeg: errorDeg, uncertaintyDeg: 2, held: true };
  return {
    clip: {
      ...built,
      id: 'built',
      path: 'built.mp4',
      side: 'left',
      truth: { ...built.truth, ...(repeats === undefined ? {} : { repeats }) },
    },
    exercise: 'foot-tap',
    model: 'full',
    source: 'fused',
    trueCount: 3,
    count: 3,
    truePartialCount: 0,
    partialCount: 0,
    matched: [rep, rep, rep],
  };
}

test('the error of measurement is the scatter of a movement filmed again, whatever all of them have in common', () => {
  // Standard deviation of 0.5, 1.5 and 1 is 0.5; MDC95 = 1.96 sqrt(2) 0.5 = 1.386.
  const [found] = repeatabilityOf([0.5, 1.5, 1].map((e) => filmed(e, 'taps')));
  expect(found).toMatchObject({ exercise: 'foot-tap', filmed: 3, semDeg: 0.5, biasDeg: 1 });
  expect(found?.mdcDeg).toBeCloseTo(1.386, 3);
});

test('clips that show a movement only once say nothing of it', () => {
  expect(repeatabilityOf([filmed(1, undefined), filmed(3, undefined)])).toEqual([]);
});
