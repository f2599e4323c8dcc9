/** Stickers in scenes drawn at random: `EVENSIDE_STICKER_SCENES=500` draws so many of each kind. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { anyScene, SCENE_FRAMES } from './any-scene.ts';
import { type Watched, watchScene } from './watched-scene.ts';

const SCENES = Number(process.env.EVENSIDE_STICKER_SCENES ?? 8);
/** Of pictures that give an angle while another dot of the sticker's colour crosses it, at most this share may show something else. */
const MOST_WRONG = 0.01;
const SECONDS_A_SCENE = 10;

const total = (all: readonly Watched[], of: (one: Watched) => number): number => all.reduce((sum, one) => sum + of(one), 0);
const rms = (all: readonly Watched[]): number =>
  Math.sqrt(
    total(all, (w) => w.squares) /
      Math.max(
        1,
        total(all, (w) => w.centres),
      ),
  );

/** Figures of a long run, to be read. */
const tell = (kind: string, all: readonly Watched[]): void => {
  if (process.env.EVENSIDE_STICKER_SCENES === undefined) return;
  const frames = all.length * (SCENE_FRAMES - 1);
  const [measured, swapped, elsewhere] = [
    total(all, (w) => w.measured),
    total(all, (w) => w.swapped),
    total(all, (w) => w.elsewhere),
  ];
  process.stdout.write(
    `${kind}: ${all.length} scenes, ${measured} of ${frames} pictures give an angle, ${swapped} swapped, ${elsewhere} elsewhere, centres ${rms(all).toFixed(3)} px\n`,
  );
};

test('no sticker is taken for another, or for anything else, whatever of another colour passes over the foot', {
  timeout: 1000 * SECONDS_A_SCENE * SCENES + 20_000,
}, () => {
  const all: Watched[] = [];
  fc.assert(
    fc.property(anyScene(fc.constantFrom('nothing', 'finger', 'other-dot')), (scene) => {
      const watched = watchScene(scene);
      fc.pre(watched !== null);
      all.push(watched);
      expect({ swapped: watched.swapped, elsewhere: watched.elsewhere }).toEqual({ swapped: 0, elsewhere: 0 });
    }),
    { numRuns: SCENES, endOnFailure: true },
  );
  tell('another colour passes', all);
  expect(total(all, (w) => w.measured)).toBeGreaterThan(0.7 * all.length * (SCENE_FRAMES - 1));
  expect(rms(all)).toBeLessThan(0.3);
});

test('where a dot of their colour crosses the stickers, in the open or under a finger, pictures that would be wrong give no angle', {
  timeout: 1000 * SECONDS_A_SCENE * SCENES + 20_000,
}, () => {
  const found = (kind: 'like-dot' | 'dot-under-finger'): readonly Watched[] => {
    // The same ones each time: of so few a share cannot be told from others.
    const scenes = fc.sample(anyScene(fc.constant(kind)), { numRuns: SCENES, seed: 21 });
    return scenes.map(watchScene).filter((watched) => watched !== null);
  };
  for (const kind of ['like-dot', 'dot-under-finger'] as const) {
    const all = found(kind);
    tell(kind, all);
    const measured = total(all, (w) => w.measured);
    expect(measured).toBeGreaterThan(0.4 * all.length * (SCENE_FRAMES - 1));
    expect(total(all, (w) => w.elsewhere)).toBeLessThanOrEqual(MOST_WRONG * measured);
  }
});
