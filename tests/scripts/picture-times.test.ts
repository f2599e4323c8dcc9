import { describe, expect, test } from 'vitest';
import { BREAK_MS, setClock } from '../../src/run/set-clock.ts';
import { ms } from '../../src/units.ts';
import { againstShown } from '../browser/counted-against-shown.ts';
import { type Asked, breaksOf, delaysOf, pageMsOf, setsOf } from '../browser/picture-times.ts';
import { slopeOf, slopeWithin } from '../browser/slope.ts';

const image = { close: () => undefined } as unknown as ImageBitmap;

/** Pictures of a camera 30 times a second, each answered `delayMs` after it was there, on the clock of the set. @param fromMs,toMs on the page's clock */
function watchedSet(spans: readonly (readonly [fromMs: number, toMs: number])[], delayMs: (pageMs: number) => number): Asked[] {
  const clock = setClock(() => pageMs);
  let pageMs = 0;
  const begunMs = spans[0]?.[0] ?? 0;
  return spans.flatMap(([fromMs, toMs]) => {
    const pictures: Asked[] = [];
    for (pageMs = fromMs; pageMs < toMs; pageMs += 100) {
      const { frame } = clock.read({ tMs: ms(pageMs - begunMs), image, turn: 0 });
      pictures.push({ tMs: frame.tMs, askedMs: pageMs + 5, answeredMs: pageMs + 5 + delayMs(pageMs) });
    }
    return pictures;
  });
}

describe('the delay of pictures', () => {
  const spans = [
    [1000, 20_000],
    [80_000, 100_000],
  ] as const;

  test('is right after a break of any length, and in every set', () => {
    const pictures = [...watchedSet(spans, () => 40), ...watchedSet([[130_000, 150_000]], () => 40)];
    const sets = setsOf(pictures);
    expect(sets.map((set) => set.length)).toEqual([2, 1]);
    for (const { delayMs } of sets.flatMap(delaysOf)) expect(delayMs).toBeCloseTo(40);
  });

  test("a moment of the set after a break is found on the page's clock, and the break itself", () => {
    const [set = []] = setsOf(watchedSet(spans, () => 40));
    expect(pageMsOf(set, 0)).toBeCloseTo(1005);
    expect(pageMsOf(set, 18_900 + BREAK_MS + 1000)).toBeCloseTo(81_005);
    expect(breaksOf(set)).toEqual([[19_905, 80_005]]);
  });

  test('one that grows within each set is seen, though each begins anew', () => {
    const growing = (fromMs: number) => watchedSet([[fromMs, fromMs + 60_000]], (pageMs) => 40 + (pageMs - fromMs) / 1000);
    const groups = setsOf([0, 100_000, 200_000].flatMap(growing)).map((set) =>
      delaysOf(set).map(({ answeredMs, delayMs }) => [answeredMs / 60_000, delayMs] as const),
    );
    expect(slopeWithin(groups).perMinute).toBeCloseTo(60, 0);
    expect(slopeOf(groups.flat()).perMinute).toBeLessThan(10);
  });
});

describe('counted against shown', () => {
  const round = { peaksMs: [1000, 2200, 3100, 4500], roundMs: 6000 };
  const shown = Array.from({ length: 20 }, (_, i) => round.peaksMs.map((t) => 7000 + i * round.roundMs + t)).flat();

  test('nothing is missed that was shown while nobody looked', () => {
    const breaks = [[30_000, 71_000]] as const;
    const counted = shown.filter((t) => t < 29_551 || t > 71_449);
    expect(againstShown(counted, { ...round, breaks })).toEqual({ missedMs: [], extraMs: [] });
    expect(againstShown(counted, { ...round, breaks: [] }).missedMs).toHaveLength(shown.length - counted.length);
  });

  test('one left out and one too many are found, before a break and after it', () => {
    const counted = shown.filter((t, i) => i !== 3 && i !== 50 && (t < 29_551 || t > 71_449));
    const more = [...counted, 15_500, 83_900 + 7000].sort((a, b) => a - b);
    expect(againstShown(more, { ...round, breaks: [[30_000, 71_000]] })).toEqual({
      missedMs: [shown[3], shown[50]],
      extraMs: [15_500, 90_900],
    });
  });
});
