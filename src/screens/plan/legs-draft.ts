import type { PrescribedExercise, PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import { startingDose } from '../../dose/starting-doses.ts';
import type { Side } from '../../pose/landmarks.ts';
import { newId } from '../../record/new-id.ts';

/** One leg, both with the same dose, or each with its own. */
export type LegChoice = Side | 'same' | 'apart';

/** Which leg a whole plan is about. */
export type Affected = Side | 'both';

/** An exercise in the editor: what each leg does, or would do. */
export interface LegsDraft {
  readonly choice: LegChoice;
  /** Whether the legs may differ. While they don't, both lines say the same but for their ids. */
  readonly parted: boolean;
  /** The line that stands for all legs that are on, unless each has its own. */
  readonly main: Side;
  readonly lines: Readonly<Record<Side, PrescribedExercise>>;
}

export const SIDES: readonly Side[] = ['left', 'right'];
export const otherLeg = (side: Side): Side => (side === 'left' ? 'right' : 'left');
/** What an exercise begins with in a plan about that leg. */
export const choiceFor = (affected: Affected): LegChoice => (affected === 'both' ? 'same' : affected);

/** An exercise with its usual starting dose. */
export function newLegs(exercise: PrescribedExerciseId, affected: Affected): LegsDraft {
  const line = () => startingDose(exercise, newId(), []);
  return { choice: choiceFor(affected), parted: false, main: 'left', lines: { left: line(), right: line() } };
}

/** The lines of an exercise as the editor has them. @param group as `legGroups` makes it: one line, or one for each leg */
export function legsOf(group: readonly PrescribedExercise[]): LegsDraft | null {
  const [first, second] = group;
  const main = first?.sides[0];
  if (!first || !main) return null;
  const lines = (other: PrescribedExercise) => (main === 'left' ? { left: first, right: other } : { left: other, right: first });
  if (second) return { choice: 'apart', parted: true, main, lines: lines(second) };
  return { choice: first.sides.length > 1 ? 'same' : main, parted: false, main, lines: lines({ ...first, id: newId() }) };
}

/** The legs that an exercise is for. */
export const legsOn = ({ choice }: LegsDraft): readonly Side[] => (choice === 'left' || choice === 'right' ? [choice] : SIDES);

/** What of it goes into the plan. */
export function itemsOf(draft: LegsDraft): readonly PrescribedExercise[] {
  const { choice, main, lines } = draft;
  if (choice === 'apart') return SIDES.map((side) => ({ ...lines[side], sides: [side] }));
  return [{ ...lines[main], sides: legsOn(draft) }];
}

const amount = ({ start }: PrescribedExercise): number => start.setsADay * start.repsASet * Math.max(1, start.holdS);

/** Whose values stay when both legs become the same: those that are shown alone, the affected leg's, else the smaller dose's; of equal ones the left. */
export function keptLeg({ choice, lines }: LegsDraft, affected: Affected): Side {
  if (choice === 'left' || choice === 'right') return choice;
  if (affected !== 'both') return affected;
  return amount(lines.right) < amount(lines.left) ? 'right' : 'left';
}

/** One leg's values for the other one as well; each line keeps its id. */
export function copied(draft: LegsDraft, from: Side): LegsDraft {
  const to = otherLeg(from);
  const copy = { ...draft.lines[from], id: draft.lines[to].id };
  return { ...draft, lines: { ...draft.lines, [to]: copy } };
}

/** Other legs. A leg that is put aside keeps its values, and has them when it comes back with a dose of its own. */
export function withChoice(draft: LegsDraft, choice: LegChoice, affected: Affected): LegsDraft {
  if (choice === draft.choice) return draft;
  if (choice === 'apart') return { ...draft, choice, parted: true };
  if (choice !== 'same') return { ...draft, choice, main: draft.parted ? choice : draft.main };
  const main = draft.parted ? keptLeg(draft, affected) : draft.main;
  return { ...copied(draft, main), choice, main, parted: false };
}

/** A change of one leg's line; of both, while they may not differ. */
export function withChange(draft: LegsDraft, side: Side, part: Partial<PrescribedExercise>): LegsDraft {
  const changed = { ...draft, lines: { ...draft.lines, [side]: { ...draft.lines[side], ...part } } };
  return draft.parted ? changed : copied(changed, side);
}
