import type { DoseLog } from '../../dose/dose-log.ts';
import { currentDose } from '../../dose/dose-step.ts';
import { legGroups } from '../../dose/leg-groups.ts';
import { PRESCRIBED_EXERCISE_IDS, type PrescribedExercise, type PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import type { Prescription } from '../../dose/prescription.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { type Affected, choiceFor, itemsOf, type LegsDraft, legsOf, newLegs, withChoice } from './legs-draft.ts';

/** An exercise that was looked at: in the plan, or put aside with all that was set for it. */
interface ExerciseDraft {
  readonly taken: boolean;
  readonly legs: LegsDraft;
}

/** A plan under way. */
export interface PlanDraft {
  /** The plan that it takes the place of. */
  readonly revised: Prescription | null;
  readonly by: Prescription['by'];
  readonly affected: Affected;
  readonly exercises: Partial<Readonly<Record<PrescribedExerciseId, ExerciseDraft>>>;
  /** Further lines of an exercise and leg, which the editor does not show. They stay in the plan as they are. */
  readonly beyond: readonly PrescribedExercise[];
  readonly selfChecks: Prescription['selfChecks'];
}

/** The L5 root's own muscles, weekly. Common practice. */
const USUAL_CHECKS: Prescription['selfChecks'] = { checks: ['big-toe', 'heel-walk'], sides: ['left', 'right'], everyDays: 7 };

/** What a plan begins with where there was none: the usual first exercise. */
export const newDraft = (role: Prescription['by']['role'] = 'patient', affected: Affected = 'left'): PlanDraft => ({
  revised: null,
  by: { role, name: '' },
  affected,
  exercises: { 'foot-tap': { taken: true, legs: newLegs('foot-tap', affected) } },
  beyond: [],
  selfChecks: USUAL_CHECKS,
});

/** The leg that all lines for one leg alone are for, where a plan has such lines and they agree. */
function affectedOf(draft: readonly LegsDraft[]): Affected {
  const alone = new Set(draft.flatMap(({ choice }) => (choice === 'left' || choice === 'right' ? [choice] : [])));
  const [leg, other] = alone;
  return leg === undefined || other !== undefined ? 'both' : leg;
}

/** A plan to be revised, at the dose that holds today: a new plan starts where the old one stands, not where it began. */
export function draftOf(prescription: Prescription, { steps }: Pick<DoseLog, 'steps'>, day: CalendarDay): PlanDraft {
  const items = prescription.items.map((item) => ({ ...item, start: currentDose(prescription, item, steps, day) }));
  const exercises: Partial<Record<PrescribedExerciseId, ExerciseDraft>> = {};
  const beyond: PrescribedExercise[] = [];
  for (const group of legGroups(items)) {
    const exercise = group[0]?.exercise;
    const legs = legsOf(group);
    if (exercise && legs && !exercises[exercise]) exercises[exercise] = { taken: true, legs };
    else beyond.push(...group);
  }
  const { by, selfChecks } = prescription;
  const affected = affectedOf(Object.values(exercises).map(({ legs }) => legs));
  return { revised: prescription, by, affected, exercises, beyond, selfChecks };
}

/** The lines that the plan would have, in the order of the catalogue. */
export const itemsOfDraft = ({ exercises, beyond }: PlanDraft): readonly PrescribedExercise[] => [
  ...PRESCRIBED_EXERCISE_IDS.flatMap((id) => {
    const draft = exercises[id];
    return draft?.taken ? itemsOf(draft.legs) : [];
  }),
  ...beyond,
];

/** Takes an exercise in, as it was when it was put aside; or puts it aside. */
export function withTaken(draft: PlanDraft, exercise: PrescribedExerciseId, taken: boolean): PlanDraft {
  const legs = draft.exercises[exercise]?.legs ?? newLegs(exercise, draft.affected);
  return { ...draft, exercises: { ...draft.exercises, [exercise]: { taken, legs } } };
}

export const withLegs = (draft: PlanDraft, exercise: PrescribedExerciseId, legs: LegsDraft): PlanDraft => ({
  ...draft,
  exercises: { ...draft.exercises, [exercise]: { taken: true, legs } },
});

/** Another leg for the whole plan: exercises follow that had the legs of the plan; those with legs of their own stay. */
export function withAffected(draft: PlanDraft, affected: Affected): PlanDraft {
  const exercises = { ...draft.exercises };
  for (const id of PRESCRIBED_EXERCISE_IDS) {
    const each = exercises[id];
    if (each && each.legs.choice === choiceFor(draft.affected))
      exercises[id] = { ...each, legs: withChoice(each.legs, choiceFor(affected), affected) };
  }
  return { ...draft, affected, exercises };
}
