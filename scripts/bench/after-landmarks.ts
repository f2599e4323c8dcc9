import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Observation } from '../../src/measure/observation.ts';
import { finishSet, type SetState, stepSet } from '../../src/measure/set.ts';
import { setOf } from '../../src/record/measure-recording.ts';
import { decodeRecording, type Recording } from '../../src/record/recording.ts';
import { ms } from '../../src/units.ts';
import { type Spread, spreadOf } from './spread.ts';

/** The cost of all that comes after landmarks and motion. */
export interface MeasureCost {
  readonly id: string;
  readonly frames: number;
  /** One frame, microseconds. */
  readonly step: Spread;
  /** The whole set at its end, ms. */
  readonly finish: Spread;
}

export interface HourCost {
  readonly frames: number;
  readonly repetitions: number;
  readonly stepSeconds: number;
  readonly finishSeconds: number;
}

/** The first rounds let the compiler settle. */
const WARM_UP_ROUNDS = 3;
const ROUNDS = 10;
/** An hour at 30 frames a second. */
const HOUR_FRAMES = 108_000;
const HOUR_STEP_MS = 1000 / 30;

/** The recordings of a folder by the pose model, by name. */
export async function recordingsIn(folder: string): Promise<readonly (readonly [string, Recording])[]> {
  const names = (await readdir(folder)).filter((name) => name.endsWith('.json')).sort();
  const all = await Promise.all(
    names.map(async (name) => {
      const decoded = decodeRecording(await readFile(join(folder, name), 'utf8'));
      if (!decoded.ok) throw new Error(`recordingsIn requires valid recordings, got ${decoded.error.kind} in ${name}`);
      return [name.replace('.json', ''), decoded.value] as const;
    }),
  );
  return all.filter(([, { model }]) => model !== 'stickers');
}

/** Times every frame's step and the set's end, over some rounds of the same recording. */
export function measureCost(id: string, recording: Recording): MeasureCost {
  const steps: number[] = [];
  const finishes: number[] = [];
  for (let round = -WARM_UP_ROUNDS; round < ROUNDS; round++) {
    let state: SetState = setOf(recording);
    for (const seen of recording.observations) {
      const from = performance.now();
      state = stepSet(state, seen).state;
      if (round >= 0) steps.push(1000 * (performance.now() - from));
    }
    const from = performance.now();
    finishSet(state);
    if (round >= 0) finishes.push(performance.now() - from);
  }
  return { id, frames: recording.observations.length, step: spreadOf(steps), finish: spreadOf(finishes) };
}

/** An hour without a break, made by repeating a recording with times that go on. */
export function hourCost(recording: Recording): HourCost {
  const { observations } = recording;
  const hour = Array.from({ length: HOUR_FRAMES }, (_, i): Observation => {
    const seen = observations[i % observations.length] as Observation;
    return { ...seen, tMs: ms(i * HOUR_STEP_MS) };
  });
  const from = performance.now();
  let state = setOf(recording);
  for (const seen of hour) state = stepSet(state, seen).state;
  const stepped = performance.now();
  const { count } = finishSet(state);
  const finished = performance.now();
  return {
    frames: hour.length,
    repetitions: count,
    stepSeconds: (stepped - from) / 1000,
    finishSeconds: (finished - stepped) / 1000,
  };
}
