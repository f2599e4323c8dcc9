import { uniformFrom } from '../../src/flow/prng.ts';
import type { GlideSample } from '../../src/reps/glide-coordination.ts';
import { deg, ms } from '../../src/units.ts';

export const KINDS = ['slide', 'tension', 'between', 'head-still', 'foot-still', 'hidden'] as const;
type GlideKind = (typeof KINDS)[number];

/** A simulated set of glides and what truly happened. */
export interface SimulatedGlide {
  readonly kind: GlideKind;
  readonly samples: readonly GlideSample[];
  /** True phase of the head's lift against the pointing of the foot, deg. */
  readonly phaseDeg: number;
  readonly cycles: readonly { readonly startMs: number; readonly endMs: number }[];
  readonly fps: number;
  readonly noiseDeg: number;
  /** From when to when the foot is hidden; null: never. */
  readonly hole: { readonly fromMs: number; readonly toMs: number } | null;
}

/** Fixed values instead of drawn ones; the movements of a seed stay the same. */
export interface Fixed {
  readonly kind?: GlideKind;
  readonly fps?: number;
  readonly noiseDeg?: number;
  /** No frame is lost. */
  readonly whole?: boolean;
}

const TAIL_MS = 1500;

/**
 * Three to twelve cycles of 1.2 to 5 s whose tempo drifts by up to a third and varies by 10 %, half of the sets with rests and holds; foot and head swing
 * by 15 to 45 degrees, the head up to 60 degrees of the cycle early or late (`between`: 84 to 96, either side); 12 to 60 frames a second, unevenly
 * timed; each signal misses up to a fifth of its frames, some never came; noise of up to 3 degrees; drifting levels. `hidden`: the foot is not seen at
 * all, or for a short look only. In a quarter of the slides and tensions the foot is hidden for a cycle or more.
 */
export function simulatedGlide(seed: number, fixed: Fixed = {}): SimulatedGlide {
  const random = uniformFrom(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const drawnKind = KINDS[
    Math.min(KINDS.length - 1, Math.floor(random() * 10 < 6 ? random() * 2 : 2 + random() * 4))
  ] as GlideKind;
  const kind = fixed.kind ?? drawnKind;
  const side = random() < 0.5 ? -1 : 1;
  const drawnLag = between(-60, 60);
  const nearNinety = side * between(84, 96);
  const lagDeg = kind === 'between' ? nearNinety : drawnLag;
  const inverse = kind === 'tension' || (kind !== 'slide' && kind !== 'between' && side < 0);
  const drawnFps = 12 * (60 / 12) ** random();
  const drawnNoise = between(0, 3);
  const fps = fixed.fps ?? drawnFps;
  const noiseDeg = fixed.noiseDeg ?? drawnNoise;
  const footSwing = kind === 'foot-still' ? 0 : between(15, 45);
  const headSwing = kind === 'head-still' ? 0 : between(15, 45);
  const period = 1200 * (5000 / 1200) ** random();
  const drift = between(-1 / 3, 1 / 3);
  const rests = random() < 0.5;
  const hold = rests ? between(0, 0.3) : 0;
  const wanted = 3 + Math.floor(10 * random());
  const cycles: { readonly startMs: number; readonly endMs: number }[] = [];
  let atMs = TAIL_MS;
  for (let i = 0; i < wanted; i++) {
    const lasts = Math.max(1000, period * (1 + drift * (i / wanted - 0.5)) * between(0.9, 1.1));
    cycles.push({ startMs: atMs, endMs: atMs + lasts });
    atMs += lasts + (rests ? between(100, 1000) : 0);
  }
  const totalMs = atMs + TAIL_MS;
  const holeAt = between(TAIL_MS, Math.max(TAIL_MS, totalMs - 3 * period));
  const holed = random() < 0.25 && (kind === 'slide' || kind === 'tension') && !fixed.whole;
  const partial = holed ? { fromMs: holeAt, toMs: holeAt + period * between(1, 2) } : null;
  const hole = kind === 'hidden' ? { fromMs: random() < 0.5 ? 0 : TAIL_MS * 0.7, toMs: totalMs } : partial;
  const lostShare = fixed.whole ? 0 : between(0, 0.2);
  const levels = {
    foot: between(-15, 10),
    head: between(-5, 5),
    footDrift: between(-3, 3) / 60_000,
    headDrift: between(-3, 3) / 60_000,
  };

  const frame = uniformFrom(seed + 2_000_000);
  const normal = gaussian(uniformFrom(seed + 1_000_000));
  const samples: GlideSample[] = [];
  for (let i = 0; (i * 1000) / fps < totalMs; i++) {
    const tMs = ((i + (fixed.whole ? 0 : 0.3 * frame())) * 1000) / fps;
    const raised = pulses(cycles, tMs, lagDeg / 360, hold);
    const foot = levels.foot + levels.footDrift * tMs - footSwing * pulses(cycles, tMs, 0, hold) + noiseDeg * normal();
    const head = levels.head + levels.headDrift * tMs + headSwing * (inverse ? 1 - raised : raised) + noiseDeg * normal();
    const unseen = hole !== null && tMs >= hole.fromMs && tMs <= hole.toMs;
    if (frame() < lostShare / 2) continue;
    const footLost = frame() < lostShare / 2;
    const headLost = frame() < lostShare / 2;
    samples.push({ tMs: ms(tMs), footDeg: unseen || footLost ? null : deg(foot), headDeg: headLost ? null : deg(head) });
  }
  const phaseDeg = inverse ? lagDeg + (lagDeg > 0 ? -180 : 180) : lagDeg;
  return { kind, samples, phaseDeg, cycles, fps, noiseDeg, hole };
}

/** The sum of the cycles' movements, 0 at rest, 1 at the top, each late by a share of its own length. */
function pulses(cycles: SimulatedGlide['cycles'], tMs: number, late: number, hold: number): number {
  let sum = 0;
  for (const { startMs, endMs } of cycles) {
    const share = (tMs - startMs) / (endMs - startMs) - late;
    if (share <= 0 || share >= 1) continue;
    const way = Math.min(1, Math.min(share, 1 - share) / ((1 - hold) / 2));
    sum += (1 - Math.cos(Math.PI * way)) / 2;
  }
  return sum;
}

function gaussian(random: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
