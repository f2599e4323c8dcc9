import { EXERCISE_IDS, type ExerciseId } from '../../src/exercises/exercise.ts';
import type { ClipWithTruth } from './clip-with-truth.ts';

const WORDS: Readonly<Record<ExerciseId, string>> = {
  'foot-tap': 'Foot taps',
  'leg-raise': 'Leg raises',
  'nerve-glide': 'Nerve glides',
  'heel-stand': 'Heel stands',
  'knee-straighten': 'Knee extensions',
  'toe-lift': 'Big toe lifts',
};

const between = (values: readonly number[], unit: string): string => {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const whole = (x: number) => String(Math.round(x * 10) / 10);
  return low === high ? `${whole(low)} ${unit}` : `${whole(low)} to ${whole(high)} ${unit}`;
};
const each = (values: readonly string[]): string => [...new Set(values)].sort().join(', ');

/** What differs between the clips, told from what is known of them. */
export function variety(clips: readonly ClipWithTruth[]): string {
  const truths = [...new Set(clips)].map((clip) => clip.truth);
  const yaws = truths.map(({ camera }) => Math.abs(camera.yawDeg));
  const bodies = [...new Set(truths.map((t) => t.model.replace(/^flat_/, '').replace('_', ' with ')))].sort();
  const lines = [
    `- Bodies: ${bodies.length} rendered ones (${bodies.join(', ')}).`,
    `- View: the camera turned off the side by ${between(yaws, 'degrees')}, ${between(
      truths.map((t) => t.camera.dist),
      'm away',
    )}; left and right legs.`,
    // The clips' own files do not tell these.
    '- As rendered: skin from light to dark, the colour of clothes, light down to under half, camera noise from little to much, walls from plain to busy.',
    `- Pictures: ${each(truths.map((t) => t.size.join('x')))} at ${each(truths.map((t) => String(t.fps)))} a second.`,
    ...EXERCISE_IDS.flatMap((id) => {
      const reps = clips.filter((c) => c.exercise === id).flatMap((c) => c.truth.reps);
      if (reps.length === 0) return [];
      const ranges = between(
        reps.map((r) => r.trueRangeDeg),
        'degrees',
      );
      return [
        `- ${WORDS[id]}: ${ranges}, each lasting ${between(
          reps.map((r) => (r.endMs - r.startMs) / 1000),
          's',
        )}.`,
      ];
    }),
  ];
  return lines.join('\n');
}
