import type { PrescribedExercise } from './prescribed-exercise.ts';

type Placed = Pick<PrescribedExercise, 'exercise' | 'sides'>;

/**
 * Lines that belong beside one another: of the same exercise, no leg twice. A line for both legs stands alone, two lines with a leg each make one group.
 * @returns one group or more an exercise, in the order in which their first lines come
 */
export function legGroups<T extends Placed>(items: readonly T[]): readonly (readonly T[])[] {
  const groups: T[][] = [];
  for (const item of items) {
    const fits = (group: readonly T[]) =>
      group.every(({ exercise, sides }) => exercise === item.exercise && !sides.some((side) => item.sides.includes(side)));
    const group = groups.find(fits);
    if (group) group.push(item);
    else groups.push([item]);
  }
  return groups;
}

/** Whether a plan has the exercise of a line in more than one line, so that its name alone does not tell which. */
export const needsLeg = (item: Placed, items: readonly Placed[]): boolean =>
  items.filter(({ exercise }) => exercise === item.exercise).length > 1;
