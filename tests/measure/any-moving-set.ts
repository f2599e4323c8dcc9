import { exerciseOf } from '../../src/exercises/catalogue.ts';
import type { Exercise } from '../../src/exercises/exercise.ts';
import { uniformFrom } from '../../src/flow/prng.ts';
import type { Observation } from '../../src/measure/observation.ts';
import type { SetSpec } from '../../src/measure/set.ts';
import { thinned } from './busy-machine.ts';
import { type BodyPose, lying, recording, sitting, specOf, standing } from './pose-builder.ts';
import { stickerFilm, toeSpec } from './sticker-builder.ts';

/** A simulated set as a camera would see it. */
export interface AnyMovingSet {
  readonly name: string;
  readonly spec: SetSpec;
  readonly observations: readonly Observation[];
}

interface Kind {
  readonly id: 'foot-tap' | 'leg-raise' | 'knee-straighten' | 'heel-stand' | 'toe-lift';
  /** Usual ranges and times of a movement there and back. */
  readonly deg: readonly [number, number];
  readonly lastsMs: readonly [number, number];
  readonly bodyAt: (deg: number, drift: number) => BodyPose;
}

const KINDS: readonly Kind[] = [
  { id: 'foot-tap', deg: [5, 18], lastsMs: [350, 1500], bodyAt: (x, d) => sitting({ ankleDeg: x + d - 5 }) },
  { id: 'leg-raise', deg: [20, 70], lastsMs: [1500, 4000], bodyAt: (x, d) => lying({ thighDeg: x + d }) },
  { id: 'knee-straighten', deg: [25, 75], lastsMs: [1200, 3500], bodyAt: (x, d) => sitting({ kneeDeg: 90 - x - d }) },
  { id: 'heel-stand', deg: [10, 25], lastsMs: [1500, 4000], bodyAt: (x, d) => standing({ ankleDeg: x + d - 5 }) },
  { id: 'toe-lift', deg: [8, 30], lastsMs: [700, 2000], bodyAt: () => sitting() },
];

/**
 * A set of any exercise at any tempo: a third with small movements between, a third with drifting rest, a third begun in the midst of a movement, a third with a jump
 * back to its beginning as in a clip that is shown over and over, a third on a machine that has no time; with noise, and a tenth of them with the leg out of sight for a while.
 */
export function anyMovingSet(seed: number): AnyMovingSet {
  const random = uniformFrom(seed);
  const between = ([low, high]: readonly [number, number]) => low + (high - low) * random();
  const third = () => random() < 1 / 3;
  const { id, deg, lastsMs, bodyAt } = KINDS[Math.floor(random() * KINDS.length)] as Kind;
  const [usual, lasts] = [between(deg), between(lastsMs)];
  const [small, drifts, midst, jumps, busy] = [third(), third(), third(), third(), third()];
  const restMs = lasts * between([0.1, 0.6]);
  const holdMs = third() ? between([200, 2000]) : 0;
  const ranges = Array.from({ length: 8 }, () => usual * (small && random() < 0.3 ? between([0.2, 0.7]) : between([0.85, 1.15])));
  const everyMs = lasts + holdMs + restMs;
  const firstMs = midst ? -between([0.1, 0.9]) * lasts : between([500, 1500]);
  const roundMs = firstMs + everyMs * between([2, 4]);
  const wave = (share: number) => (1 - Math.cos(Math.PI * share)) / 2;
  const moved = (t: number): number => {
    const n = Math.floor((t - firstMs) / everyMs);
    const into = t - firstMs - n * everyMs;
    const [up, down] = [into / (lasts / 2), (into - holdMs) / (lasts / 2)];
    const share = up <= 1 ? wave(up) : down <= 1 ? 1 : down <= 2 ? wave(2 - down) : 0;
    return n < 0 ? 0 : (ranges[n] ?? 0) * share;
  };
  const at = (t: number) => moved(jumps ? t % roundMs : t);
  const drift = (t: number) => (drifts ? 0.15 * usual * Math.sin(t / 4000) : 0);
  const length = Math.min(16_000, Math.max(0, firstMs) + everyMs * 6);
  const hidden = random() < 0.1 ? between([2000, length]) : Number.POSITIVE_INFINITY;
  const outOfSight = (t: number) => t > hidden && t < hidden + 1200;
  const stickers = id === 'toe-lift';
  const seen = stickers
    ? stickerFilm({ lastsMs: length, toeDeg: (t) => at(t) + drift(t), seed, hidden: (t) => (outOfSight(t) ? ['tip'] : []) })
    : recording({
        lastsMs: length,
        bodyAt: (t) => (outOfSight(t) ? null : bodyAt(at(t), drift(t))),
        noisePx: 0.2,
        seed,
        flow: true,
      });
  const exercise: Exercise = exerciseOf(id);
  return {
    name: `${id}${busy ? ', few pictures' : ''}`,
    spec: stickers ? toeSpec({ endsItself: true, seenBy: 'stickers' }) : specOf(exercise),
    observations: busy ? thinned(seen, seed) : seen,
  };
}
