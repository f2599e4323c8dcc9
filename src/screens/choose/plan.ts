import { startingDose } from '../../dose/starting-doses.ts';
import { exerciseOf } from '../../exercises/catalogue.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import { KNEE_LIMIT_DEG } from '../../measure/knee-limit.ts';
import type { AngleMark } from '../../symptoms/angle-mark.ts';
import { glideLimit } from '../../symptoms/glide-limit.ts';
import type { PictureKind, Pictures, SetGuide, SetPlan } from '../services.ts';
import type { Choices } from './choices.ts';

/** The pictures that a kind stands for; null when a file is wanted and none is chosen. */
function picturesOf(kind: PictureKind, choices: Choices, file: File | null): Pictures | null {
  if (kind === 'camera') return { kind, deviceId: choices.deviceId };
  if (kind === 'example') return { kind };
  return file ? { kind, file } : null;
}

/** A set that nobody prescribed goes as far as is usual for its exercise, at one's own pace. */
const freeGuide = (exercise: ExerciseId): SetGuide => ({
  target: startingDose(exercise, '', []).target,
  holdS: 0,
  tempoS: null,
});

/** Whether the chosen exercise is to be seen by stickers: it can't be seen otherwise, or that was chosen. */
export function bySticker({ exercise, by }: Pick<Choices, 'exercise' | 'by'>): boolean {
  const { seenBy } = exerciseOf(exercise);
  return seenBy[0] === 'stickers' || (by === 'stickers' && seenBy.includes('stickers'));
}

/** The set that the choices ask for; null when a file is wanted and none is chosen. */
export function planOf(kind: PictureKind, choices: Choices, file: File | null): SetPlan | null {
  const pictures = picturesOf(kind, choices, file);
  if (!pictures) return null;
  const { exercise, side, targetReps, model, head, kneeLimitDeg } = choices;
  const stickers = bySticker(choices) ? { stickers: { kind: 'find', colour: null } as const } : {};
  return { pictures, exercise, side, targetReps, model, head, kneeLimitDeg, guide: freeGuide(exercise), ...stickers };
}

/** The recorded example on the first screen: what its film shows. */
export const EXAMPLE_PLAN: SetPlan = {
  pictures: { kind: 'example' },
  exercise: 'foot-tap',
  side: 'left',
  targetReps: 5,
  model: 'full',
  head: 'find',
  kneeLimitDeg: KNEE_LIMIT_DEG,
  guide: freeGuide('foot-tap'),
};

/** The same set, a glide's with the limit for its leg. @param marks all that were kept of this person */
export function withLegLimit(plan: SetPlan, marks: readonly AngleMark[]): SetPlan {
  const limit = plan.exercise === 'nerve-glide' ? glideLimit(marks, plan.side) : null;
  return limit ? { ...plan, elevationLimitDeg: limit.elevationDeg } : plan;
}
