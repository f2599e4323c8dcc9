import { exerciseOf } from '../../src/exercises/catalogue.ts';
import { stepSet } from '../../src/measure/set.ts';
import { measureRecording, setOf } from '../../src/record/measure-recording.ts';
import type { Recording } from '../../src/record/recording.ts';
import { type CountDelays, countDelays, type Heard, knowable } from './count-delay.ts';
import { type MachineSpeed, machineTurns, type Told } from './machine-turns.ts';

/** How late the repetitions of a recording are counted when it is replayed through the live path. */
export interface CountReplay {
  /** From the moment it could first be known to the picture that told it: by the pictures' own times, whatever the computer. */
  readonly stream: CountDelays;
  /** From the same moment until the picture that told it had been worked on. */
  readonly clock: CountDelays;
}

/** In how many places of a turn the machine begins, evenly spread, so that no luck decides where its turns fall. Chosen. */
const PHASES = 12;

/** @param speed the machine's; null: every picture is looked at whole and told at once, the recording's own rate */
export function replayCounts(recording: Recording, speed: MachineSpeed | null): CountReplay {
  const { rule, segments } = exerciseOf(recording.exercise);
  const known = knowable(measureRecording(recording).curve, rule);
  const runs: readonly (readonly Told[])[] = speed
    ? Array.from({ length: PHASES }, (_, i) =>
        machineTurns(recording.observations, segments, speed, (i * speed.wholeMs) / PHASES),
      )
    : [recording.observations.map((seen) => ({ seen, atMs: seen.tMs }))];
  const replays = runs.map((told) => heardOf(recording, told));
  return {
    stream: together(replays.map(({ stream }) => countDelays(stream, known))),
    clock: together(replays.map(({ clock }) => countDelays(clock, known))),
  };
}

/** What is counted, by the time of the picture that told it and by the time it was out. */
function heardOf(recording: Recording, told: readonly Told[]) {
  const stream: Heard[] = [];
  const clock: Heard[] = [];
  let state = setOf(recording);
  for (const { seen, atMs } of told) {
    const step = stepSet(state, seen);
    state = step.state;
    for (const event of step.events) {
      if (event.kind !== 'rep') continue;
      stream.push({ peakMs: event.rep.peakMs, atMs: seen.tMs });
      clock.push({ peakMs: event.rep.peakMs, atMs });
    }
  }
  return { stream, clock };
}

/** Several replays, or several recordings, as one. */
export const together = (all: readonly CountDelays[]): CountDelays => ({
  delaysMs: all.flatMap(({ delaysMs }) => delaysMs),
  unmatched: all.reduce((sum, { unmatched }) => sum + unmatched, 0),
  missed: all.reduce((sum, { missed }) => sum + missed, 0),
});
