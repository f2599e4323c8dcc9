import type { Side } from '../pose/landmarks.ts';
import { addDays, type CalendarDay, daysBetween } from '../symptoms/calendar-day.ts';
import { mayExercise } from '../symptoms/may-exercise.ts';
import type { RedFlagId, Urgency } from '../symptoms/red-flags.ts';
import type { WeaknessCause } from '../symptoms/weakness.ts';
import type { FlareReason } from './day-verdict.ts';
import type { DoseLog } from './dose-log.ts';
import { flareDays } from './flare-days.ts';
import type { PrescribedExerciseId } from './prescribed-exercise.ts';
import { currentPrescription, type Prescription } from './prescription.ts';
import { propose } from './propose.ts';

/** A flare further back than this from the last entry is no news to anybody. Chosen: the two weeks between two visits. */
const FLARES_LOOKED_BACK_DAYS = 14;

/** A step up that the rule offers. */
export interface OfferedStep {
  readonly exercise: PrescribedExerciseId;
  readonly sides: readonly Side[];
  /** The day of sets that it rests on. */
  readonly aboutDay: CalendarDay;
  /** For how many days after that day it is offered. */
  readonly freshDays: number;
}

/** Why sets are stopped. */
export interface StopFact {
  readonly flags: readonly RedFlagId[];
  readonly weakness: readonly WeaknessCause['kind'][];
  /** Whom to call; null when it is weakness alone. */
  readonly urgency: Urgency | null;
}

/** What a therapist's list says of one person: worked out from the diary and the sets alone, so that it stays true until either changes. */
export interface PersonFacts {
  /** The last day on which a set was done or anything was told; null: never. */
  readonly lastActivity: CalendarDay | null;
  readonly plan: {
    readonly since: CalendarDay;
    readonly lines: readonly { readonly exercise: PrescribedExerciseId; readonly sides: readonly Side[] }[];
  } | null;
  /** Sets are stopped, as the last entry left it. */
  readonly stop: StopFact | null;
  readonly flare: { readonly day: CalendarDay; readonly reason: FlareReason['kind'] } | null;
  readonly steps: readonly OfferedStep[];
}

/** The facts of a whole log. */
export function personFacts(log: DoseLog): PersonFacts {
  const told = [...log.reports, ...log.checkIns, ...log.selfChecks, ...log.redFlags, ...log.clearances, ...log.steps];
  const lastActivity = lastOf([...log.done, ...told]);
  const plan = currentPrescription(log.prescriptions);
  const last = lastOf([...log.done, ...told, ...log.prescriptions]);
  return {
    lastActivity,
    plan: plan && { since: plan.day, lines: plan.items.map(({ exercise, sides }) => ({ exercise, sides })) },
    stop: last ? stopFact(log, last) : null,
    flare: last ? lastFlare(log, last) : null,
    steps: plan && last ? offeredSteps(plan, log, nextJudged(log, last)) : [],
  };
}

function stopFact(log: DoseLog, day: CalendarDay): StopFact | null {
  const gate = mayExercise(log, day);
  if (gate.kind === 'may') return null;
  return { flags: gate.flags, weakness: gate.weakness.map(({ kind }) => kind), urgency: gate.urgency };
}

const lastOf = (entries: readonly { readonly day: CalendarDay }[]): CalendarDay | null =>
  entries.reduce<CalendarDay | null>((last, { day }) => (last === null || day > last ? day : last), null);

/** The first day on which nothing of the last one stands in the way: on the day of a set or of a change no dose is raised. */
const nextJudged = ({ done, steps }: DoseLog, last: CalendarDay): CalendarDay =>
  [...done, ...steps].some(({ day }) => day === last) ? addDays(last, 1) : last;

function lastFlare(log: DoseLog, last: CalendarDay): PersonFacts['flare'] {
  const flare = flareDays(log, addDays(last, 1 - FLARES_LOOKED_BACK_DAYS), last).at(-1);
  const reason = flare?.lines[0]?.reason.kind;
  return flare && reason ? { day: flare.day, reason } : null;
}

function offeredSteps(plan: Prescription, log: DoseLog, day: CalendarDay): readonly OfferedStep[] {
  return plan.items.flatMap((item) => {
    const proposal = propose(plan, item, log, day);
    if (proposal.kind !== 'up') return [];
    const { exercise, sides, progression } = item;
    return [{ exercise, sides, aboutDay: proposal.aboutDay, freshDays: progression.freshDays }];
  });
}

/** Whether a step is still offered on a day: not yet on the day that it rests on. */
export const isOffered = ({ aboutDay, freshDays }: OfferedStep, day: CalendarDay): boolean => {
  const age = daysBetween(aboutDay, day);
  return age > 0 && age <= freshDays;
};
