import type { ExerciseId } from '../../src/exercises/exercise.ts';

const OF_JOINT: Readonly<Record<string, ExerciseId>> = {
  ankle: 'foot-tap',
  hip: 'leg-raise',
  knee: 'knee-straighten',
  toe: 'toe-lift',
};

/** What a clip's truth says was done (in words) and moved (the joint). */
export interface Shown {
  readonly exercise: string;
  readonly measures: string;
}

/** The exercise that a clip shows; null when none here measures it. Nerve glides and heel stands move the ankle too, yet are measured otherwise. */
export function exerciseShown({ exercise, measures }: Shown): ExerciseId | null {
  if (/glide/.test(exercise)) return 'nerve-glide';
  return /heel stand/.test(exercise) ? 'heel-stand' : (OF_JOINT[measures] ?? null);
}
