import type { Exercise } from '../../src/exercises/exercise.ts';
import { footTap } from '../../src/exercises/foot-tap.ts';
import { legRaise } from '../../src/exercises/leg-raise.ts';
import { uniformFrom } from '../../src/flow/prng.ts';
import type { RawAngle } from '../../src/measure/movements.ts';
import { ms } from '../../src/units.ts';

/** A movement as it was simulated. */
export interface TrueMovement {
  readonly startMs: number;
  readonly endMs: number;
  readonly rangeDeg: number;
  readonly complete: boolean;
}

/** A simulated set: what a measurement would see of it, and what truly happened. */
export interface SimulatedSet {
  readonly exercise: Exercise;
  readonly series: readonly RawAngle[];
  readonly movements: readonly TrueMovement[];
  readonly fps: number;
  readonly tempoHz: number;
}

/** The sensor's noise, SD in deg. */
const NOISE_DEG = 0.3;
/** Tremor, half its swing, as a share of the least movement that is noticed: up to 0.6 degrees for taps, 1.05 for raises. */
const TREMOR_SHARE = 0.3;
/** Full movements scatter about the person's usual range by this coefficient of variation at most, cut off at 2.5 of them. */
const SPREAD = 0.15;
/** Frames in one movement there and back, at least: four taps a second at 28 frames a second. A tenth of them is lost on top. */
const FRAMES_A_MOVEMENT = 7;

const minimumJerk = (share: number): number => share ** 3 * (10 - 15 * share + 6 * share ** 2);
const raisedCosine = (share: number): number => (1 - Math.cos(Math.PI * share)) / 2;

type Path = readonly { readonly fromMs: number; readonly toMs: number; readonly from: number; readonly to: number }[];

/**
 * A set of foot taps (5 to 20 degrees, 0.3 to 4 a second) or leg raises (15 to 80 degrees, 0.1 to 0.8 a second) with 3 to 20 complete movements
 * and, in half of the sets, some of about a third of the range in between; holds, rests and pauses; tremor of 4 to 6 Hz; a drifting baseline;
 * noise; 8 to 60 frames a second, unevenly timed, a tenth of them lost; in a third of the sets a gap of 0.8 to 3 s while the joint rests.
 * @param fpsOf another frame rate for the same movements
 */
export function simulatedSet(seed: number, fpsOf?: number): SimulatedSet {
  const random = uniformFrom(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const chance = (p: number) => random() < p;
  const exercise = chance(0.5) ? footTap : legRaise;
  const taps = exercise === footTap;
  const usual = taps ? between(5, 20) : between(15, 80);
  const spread = between(0.03, SPREAD);
  const tempoHz = taps ? 0.3 * (4 / 0.3) ** random() : 0.1 * (0.8 / 0.1) ** random();
  const drawnFps = Math.max(FRAMES_A_MOVEMENT * tempoHz, 8 * (60 / 8) ** random());
  const fps = fpsOf ?? drawnFps;
  const shape = chance(0.5) ? minimumJerk : raisedCosine;
  const partialShare = chance(0.5) ? between(0.1, 0.3) : 0;
  const continuous = chance(0.3);
  const holds = chance(0.4);

  const movements: TrueMovement[] = [];
  const path: Path[number][] = [];
  const rests: { readonly fromMs: number; readonly toMs: number }[] = [];
  let atMs = 0;
  const go = (lastsMs: number, from: number, to: number) => {
    path.push({ fromMs: atMs, toMs: atMs + lastsMs, from, to });
    atMs += lastsMs;
  };
  const rest = (lastsMs: number) => {
    rests.push({ fromMs: atMs, toMs: atMs + lastsMs });
    go(lastsMs, 0, 0);
  };
  const move = (complete: boolean) => {
    const normal = Math.max(-2.5, Math.min(2.5, Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random())));
    const rangeDeg = usual * (complete ? 1 + spread * normal : between(0.28, 0.38));
    const periodMs = (1000 / tempoHz) * between(0.85, 1.15);
    const restMs = continuous ? 0 : periodMs * between(0.05, 0.3);
    const upMs = (periodMs - restMs) * between(0.4, 0.6);
    const startMs = atMs;
    go(upMs, 0, rangeDeg);
    if (holds && tempoHz < 1) go(between(0, 2000), rangeDeg, rangeDeg);
    go(periodMs - restMs - upMs, rangeDeg, 0);
    movements.push({ startMs, endMs: atMs, rangeDeg, complete });
    if (restMs > 0) rest(restMs);
    if (chance(0.05)) rest(between(2000, 8000));
  };
  rest(1200);
  const wanted = 3 + Math.floor(18 * random());
  for (let done = 0; done < wanted; done++) {
    if (chance(partialShare)) move(false);
    move(true);
  }
  if (chance(1 / 3)) rest(between(4000, 5000));
  const gap = gapIn(
    rests.filter((r) => r.toMs - r.fromMs > 3500),
    between(800, 3000),
  );
  rest(1200);

  const tremor = { deg: exercise.rule.noticeDeg * TREMOR_SHARE * random(), hz: between(4, 6), phase: 6.3 * random() };
  const drift = { degPerMs: between(-4, 4) / 60_000, deg: 0.1 * usual * random(), periodMs: between(20_000, 60_000) };
  const level = between(-10, 10);
  const uneven = chance(0.5) ? 0.2 : 0;
  const noise = gaussian(uniformFrom(seed + 1_000_000));
  const frame = uniformFrom(seed + 2_000_000);
  const series: RawAngle[] = [];
  for (let i = 0, k = 0; (i * 1000) / fps < atMs; i++) {
    const tMs = ((i + uneven * frame()) * 1000) / fps;
    while ((path[k] as Path[number]).toMs < tMs && k < path.length - 1) k++;
    const { fromMs, toMs, from, to } = path[k] as Path[number];
    const lost = frame();
    const inGap = gap !== null && tMs >= gap.fromMs && tMs <= gap.toMs;
    // Half of the lost frames never came, the others came without the leg.
    if (lost < 0.05) continue;
    const deg =
      level +
      from +
      (to - from) * shape(Math.min(1, Math.max(0, (tMs - fromMs) / (toMs - fromMs)))) +
      tremor.deg * Math.sin((2 * Math.PI * tremor.hz * tMs) / 1000 + tremor.phase) +
      drift.degPerMs * tMs +
      drift.deg * Math.sin((2 * Math.PI * tMs) / drift.periodMs) +
      NOISE_DEG * noise();
    const measured = lost < 0.1 || inGap ? null : { deg, variance: NOISE_DEG ** 2 };
    series.push({ tMs: ms(tMs), measured });
  }
  return { exercise, series, movements, fps, tempoHz };
}

/** A gap of that length in the middle of the last of these rests. */
function gapIn(rests: readonly { readonly fromMs: number; readonly toMs: number }[], lastsMs: number) {
  const rest = rests[rests.length - 1];
  if (!rest) return null;
  const middle = (rest.fromMs + rest.toMs) / 2;
  return { fromMs: middle - lastsMs / 2, toMs: middle + lastsMs / 2 };
}

function gaussian(random: () => number): () => number {
  return () => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
}
