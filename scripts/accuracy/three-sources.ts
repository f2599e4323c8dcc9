import { exerciseOf } from '../../src/exercises/catalogue.ts';
import { angleSeries } from '../../src/measure/angle-series.ts';
import { readLeg } from '../../src/measure/leg-reading.ts';
import { sampleOf } from '../../src/measure/leg-sample.ts';
import type { Observation } from '../../src/measure/observation.ts';
import type { SetResult } from '../../src/measure/set-result.ts';
import { measureRecording } from '../../src/record/measure-recording.ts';
import type { Recording } from '../../src/record/recording.ts';

/** From what a clip is measured: the pose model alone, the picture's own motion alone, or, as the product does, both joined. */
export const SOURCES = ['landmarks', 'flow', 'fused'] as const;
export type Source = (typeof SOURCES)[number];

const withoutMotion = (seen: Observation): Observation => ({ ...seen, motion: null });
const blind = (seen: Observation): Observation => ({ ...seen, landmarks: null, motion: null });

/**
 * Frames that the picture's motion does not tell in full become frames in which nothing was seen; in the others the landmarks give only the level
 * at rest. What is left is the motion alone.
 */
function motionOnly({ observations, exercise, side }: Recording): readonly Observation[] {
  const samples = observations.map((seen) => sampleOf(seen, side));
  const frames = angleSeries(samples, exerciseOf(exercise), readLeg(samples, exerciseOf(exercise).segments));
  return observations.map((seen, i) => (frames[i]?.source === 'flow' ? seen : blind(seen)));
}

/** Measures one recording from each source, with the same code. */
export function measureThreeWays(recording: Recording): Readonly<Record<Source, SetResult>> {
  const { observations } = recording;
  return {
    landmarks: measureRecording({ ...recording, observations: observations.map(withoutMotion) }),
    flow: measureRecording({ ...recording, observations: motionOnly(recording) }),
    fused: measureRecording(recording),
  };
}
