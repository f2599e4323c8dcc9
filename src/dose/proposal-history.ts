import { addDays, type CalendarDay } from '../symptoms/calendar-day.ts';
import { byMoment } from '../symptoms/entry.ts';
import { type DayVerdict, dayVerdict } from './day-verdict.ts';
import { isOf } from './done-set.ts';
import { sameDose } from './dose.ts';
import type { DoseLog } from './dose-log.ts';
import type { DoseStep } from './dose-step.ts';
import { entriesOfDay } from './entries-of-day.ts';
import { asLinesNow } from './lines-now.ts';
import { logUntil, logUntilDay } from './log-until.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
import { currentPrescription, type Prescription } from './prescription.ts';
import { type Judge, type Proposal, propose } from './propose.ts';

/**
 * What became of a proposal. `taken`: agreed to as it was. `chosen`: somebody chose another step by themselves. `not-taken`: a change was open and nobody
 * agreed to it. `nothing-to-take`: it asked for no change of the dose.
 */
export type ProposalAnswer =
  | { readonly kind: 'taken' | 'chosen'; readonly step: DoseStep }
  | { readonly kind: 'not-taken' | 'nothing-to-take' };

/** A proposal that stood on one day, or the same one on several days in a row. */
export interface PastProposal {
  /** The line as it was prescribed then. */
  readonly item: PrescribedExercise;
  readonly firstDay: CalendarDay;
  readonly lastDay: CalendarDay;
  /** As it stood on the last of these days. */
  readonly proposal: Proposal;
  readonly answer: ProposalAnswer;
}

/** Moments are told to the millisecond. */
const justBefore = (moment: string): string => new Date(Date.parse(moment) - 1).toISOString();

/**
 * What was proposed on each day, and what became of it: proposals are not stored, but follow from the log as it stood. For each line and day that is the
 * proposal at which its first set began, on a day without a set the one at its end, and the one at which each step was agreed to. It is replayed from the
 * diary as it is now: a repetition struck out since counts as struck out then.
 * @param from,to both included; the log must reach back further, since the days before are judged too
 * @returns line by line, each oldest first; every step of a plan in the log is among them; the same proposal on days in a row, of which nothing came, is one
 */
export function proposalHistory(log: DoseLog, from: CalendarDay, to: CalendarDay): readonly PastProposal[] {
  const days = proposalsDayByDay(log, from, to);
  for (;;) {
    const day = days.next();
    if (day.done) return day.value;
  }
}

/** The same day by day, for who has something else to do meanwhile: a year of many lines takes seconds. */
export function* proposalsDayByDay(log: DoseLog, from: CalendarDay, to: CalendarDay): Generator<void, readonly PastProposal[]> {
  const lines = new Map<string, PastProposal[]>();
  const judges = new Map<string, Judge>();
  for (let day = from; day <= to; day = addDays(day, 1)) {
    const whole = logUntilDay(log, day);
    const held = currentPrescription(whole.prescriptions);
    const gone = whole.steps.filter((step) => step.day === day && !held?.items.some(({ id }) => id === step.itemId));
    for (const itemId of new Set([...(held?.items ?? []), ...gone.map((step) => ({ id: step.itemId }))].map(({ id }) => id))) {
      const row = lines.get(itemId) ?? [];
      lines.set(itemId, row);
      for (const past of proposalsOf(itemId, whole, day, judges)) {
        const last = row.at(-1);
        if (last && isSame(last, past)) row[row.length - 1] = { ...past, firstDay: last.firstDay };
        else row.push(past);
      }
    }
    yield;
  }
  return [...lines.values()].flat();
}

/**
 * Judges each day under one plan once for what was told about it by then. Of one diary, cut at different moments, how much of the day is there says which part it is;
 * of its check-ins, which.
 */
function withMemory(): Judge {
  const judged = new Map<PrescribedExercise, Map<string, DayVerdict>>();
  return (item, dose, log, day) => {
    const verdicts = judged.get(item) ?? new Map<string, DayVerdict>();
    judged.set(item, verdicts);
    const { reports, redFlags, done, checkIns } = entriesOfDay(log, day);
    const key = JSON.stringify([day, dose, reports.length, redFlags.length, done.length, checkIns.map(({ id }) => id)]);
    const verdict = verdicts.get(key) ?? dayVerdict(item, dose, log, day);
    verdicts.set(key, verdict);
    return verdict;
  };
}

/** The proposals of one line on one day, oldest first. @param whole the log at the end of the day */
function proposalsOf(itemId: string, whole: DoseLog, day: CalendarDay, judges: Map<string, Judge>): readonly PastProposal[] {
  const steps = whole.steps.filter((step) => step.itemId === itemId && step.day === day).toSorted(byMoment);
  const standing = (prescription: Prescription | null, log: DoseLog, answer: (proposal: Proposal) => ProposalAnswer) => {
    const item = prescription?.items.find(({ id }) => id === itemId);
    if (!prescription || !item) return [];
    const judge = judges.get(prescription.id) ?? withMemory();
    judges.set(prescription.id, judge);
    const proposal = propose(prescription, item, log, day, judge);
    return [{ item, firstDay: day, lastDay: day, proposal, answer: answer(proposal) }];
  };
  const stepped = steps.flatMap((step) => {
    const by = whole.prescriptions.find(({ id }) => id === step.prescriptionId) ?? null;
    const answer = { kind: step.by === 'rule' ? 'taken' : 'chosen', step } as const;
    return standing(by, logUntil(whole, justBefore(step.at)), () => answer).map((past) => ({ at: step.at, past }));
  });
  const held = currentPrescription(whole.prescriptions);
  const item = held?.items.find(({ id }) => id === itemId);
  const done = held ? asLinesNow(whole, held).done : [];
  const ends = item ? done.flatMap((set) => (set.day === day && isOf(item, set) ? [set.endedAt] : [])) : [];
  const firstEnd = ends.toSorted()[0];
  // Nothing is told or agreed to while a set runs, so that what stood just before its end is what it began with.
  const begun = firstEnd === undefined ? null : justBefore(firstEnd);
  const then = begun === null ? whole : logUntil(whole, begun);
  const open = standing(currentPrescription(then.prescriptions), then, ({ kind }) => ({
    kind: kind === 'up' || kind === 'back' ? 'not-taken' : 'nothing-to-take',
  })).filter(({ proposal }) => !saysNothingNew(proposal, steps));
  const at = begun ?? '~';
  return [...stepped, ...open.map((past) => ({ at, past }))].toSorted(byMoment).map(({ past }) => past);
}

/** After a step of the day, that it was changed, or just the proposal that was agreed to. */
const saysNothingNew = (proposal: Proposal, steps: readonly DoseStep[]): boolean =>
  steps.length > 0 &&
  (('reason' in proposal && (proposal.reason.kind === 'changed-today' || proposal.reason.kind === 'already-judged')) ||
    ('to' in proposal && steps.some(({ to }) => sameDose(to, proposal.to))));

function isSame(a: PastProposal, b: PastProposal): boolean {
  if (a.answer.kind !== b.answer.kind || 'step' in a.answer) return false;
  const [one, other] = [a.proposal, b.proposal];
  if (one.kind !== other.kind || !sameDose(one.from, other.from)) return false;
  if ('to' in one && 'to' in other && !sameDose(one.to, other.to)) return false;
  return reasonOf(one) === reasonOf(other);
}

const reasonOf = (proposal: Proposal): string | null => ('reason' in proposal ? proposal.reason.kind : null);
