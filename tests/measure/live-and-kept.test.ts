/**
 * Sets that are stopped at any of their frames: the count that was shown then against the one that is kept. `EVENSIDE_STOPS=200` simulates so many sets and stops them,
 * and the recordings, at every frame; usually at some.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { exerciseOf } from '../../src/exercises/catalogue.ts';
import { decodeRecording, type Recording } from '../../src/record/recording.ts';
import { anyMovingSet } from './any-moving-set.ts';
import { looped } from './busy-machine.ts';
import { type Stop, stoppedAnywhere, tallied } from './stopped-anywhere.ts';

const ON_DEMAND = process.env.EVENSIDE_STOPS;
const SETS = Number(ON_DEMAND ?? 30);
const EVERY = ON_DEMAND === undefined ? 29 : 1;
/** Seeds on which nothing was chosen or tried. */
const FIRST_SEED = 9_100_001;
const TIMEOUT = ON_DEMAND === undefined ? 60_000 : 24 * 3600_000;

const FOLDER = join(import.meta.dirname, '../../recordings');
const IDS = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.replace('.json', ''));

function recordingOf(id: string): Recording {
  const decoded = decodeRecording(readFileSync(join(FOLDER, `${id}.json`), 'utf8'));
  if (!decoded.ok) throw new Error(`${id} is no recording: ${JSON.stringify(decoded.error)}`);
  return decoded.value;
}

const specOf = ({ exercise, side, source, model }: Recording) => ({
  exercise: exerciseOf(exercise),
  side,
  size: { width: source.width, height: source.height },
  targetReps: null,
  endsItself: true,
  ...(model === 'stickers' ? { seenBy: model } : {}),
});

/** Nothing that was shown as counted goes without a word of it, and nothing comes without one. */
function expectAllSaid(stops: readonly Stop[]): void {
  expect(stops.map(({ shown, lost, won }) => shown - lost.length + won.length)).toEqual(stops.map(({ kept }) => kept));
}

test.each(IDS)(
  'what was shown as counted is kept, wherever the set is stopped: %s',
  (id) => {
    const recording = recordingOf(id);
    const { observations } = recording;
    const lastMs = observations.at(-1)?.tMs ?? 0;
    const twice = looped(observations, { fromMs: 0, toMs: lastMs + 33, rounds: 2 });
    const stops = stoppedAnywhere(specOf(recording), twice, EVERY);
    if (ON_DEMAND !== undefined) console.log(tallied(id, stops));
    expectAllSaid(stops);
    expect(stops.filter(({ shown, kept }) => shown > kept)).toEqual([]);
    // One that is on its way back may be counted a moment earlier or later.
    expect(stops.flatMap(({ won }) => won.filter((kind) => kind !== 'just-back'))).toEqual([]);
  },
  TIMEOUT,
);

test(
  'of simulated sets nothing that was shown as counted goes without a word, wherever they are stopped',
  () => {
    const byName = new Map<string, Stop[]>();
    for (let i = 0; i < SETS; i++) {
      const { name, spec, observations } = anyMovingSet(FIRST_SEED + i);
      const stops = stoppedAnywhere(spec, observations, EVERY, i % EVERY);
      byName.set(name, [...(byName.get(name) ?? []), ...stops]);
    }
    const stops = [...byName.values()].flat();
    if (ON_DEMAND !== undefined) for (const [name, its] of [...byName, ['all', stops] as const]) console.log(tallied(name, its));
    expect(stops.filter(({ shown }) => shown > 0).length).toBeGreaterThan(stops.length / 4);
    expectAllSaid(stops);
  },
  TIMEOUT,
);
