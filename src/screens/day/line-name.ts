import { needsLeg } from '../../dose/leg-groups.ts';
import type { PrescribedExercise } from '../../dose/prescribed-exercise.ts';
import { limbsOf } from '../parts/limb-words.ts';
import type { Words } from '../words/words.ts';
import { prescribedWords } from './prescribed-words.ts';

/** What a line of a plan is called among the plan's lines: with its leg where another line has the same exercise. */
export function lineName(item: PrescribedExercise, items: readonly PrescribedExercise[], words: Words): string {
  const { plural } = prescribedWords(item.exercise, words);
  const legs = item.sides.map((side) => limbsOf(item.exercise, words)[side].legLower).join(', ');
  return needsLeg(item, items) ? `${plural}, ${legs}` : plural;
}
