import type { Segment } from '../../src/flow/leg-motion.ts';
import type { Observation } from '../../src/measure/observation.ts';

/** What a machine needs for a camera's pictures, ms. */
export interface MachineSpeed {
  /** A picture looked at whole: taken over, pose, motion and measurement. */
  readonly wholeMs: number;
  /** A picture in between, in which the leg is only followed. */
  readonly betweenMs: number;
}

/** A picture's observation, and when it is out, on the recording's clock. */
export interface Told {
  readonly seen: Observation;
  readonly atMs: number;
}

/**
 * What a machine tells of a recording that comes at its own rate, as live: whenever it is free the newest picture is looked at whole, and the leg is followed
 * in those since the one before, which is told first (`run/observations.ts`). A picture counts as there at its own time: what the camera takes is not known.
 * @param segments those that must have been followed for a picture in between to tell anything
 * @param fromMs when it begins to look, on the recording's clock: moves where in a movement its turns fall
 */
export function machineTurns(
  recorded: readonly Observation[],
  segments: readonly Segment[],
  { wholeMs, betweenMs }: MachineSpeed,
  fromMs: number,
): readonly Told[] {
  const told: Told[] = [];
  let freeMs = fromMs;
  let next = 0;
  for (let first = recorded[next]; first; first = recorded[next]) {
    const startMs = Math.max(freeMs, first.tMs);
    let newest = next;
    while ((recorded[newest + 1]?.tMs ?? Number.POSITIVE_INFINITY) <= startMs) newest++;
    const between = recorded.slice(next, newest);
    const followedMs = startMs + betweenMs * between.length;
    for (const seen of between) {
      if (segments.every((segment) => seen.motion?.[segment]))
        told.push({ seen: { ...seen, landmarks: null }, atMs: followedMs });
    }
    freeMs = followedMs + wholeMs;
    told.push({ seen: recorded[newest] as Observation, atMs: freeMs });
    next = newest + 1;
  }
  return told;
}
