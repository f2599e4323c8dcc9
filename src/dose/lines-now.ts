import type { Side } from '../pose/landmarks.ts';
import type { DoseLog } from './dose-log.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
import type { Prescription } from './prescription.ts';

const SIDES: readonly Side[] = ['left', 'right'];
const legKey = (itemId: string, side: Side): string => `${itemId} ${side}`;
const hasLeg = ({ items }: Prescription, itemId: string, side: Side): boolean =>
  items.some(({ id, sides }) => id === itemId && sides.includes(side));

/** The plan and those that it revises, one after the other, newest first. */
function chainOf(prescription: Prescription, all: readonly Prescription[]): readonly Prescription[] {
  const chain = [prescription];
  const next = () => all.find(({ id }) => id === chain.at(-1)?.revises && chain.every((each) => each.id !== id));
  for (let older = next(); older; older = next()) chain.push(older);
  return chain;
}

/** The line of the revision that goes on with one leg of a line: the same one, else one of the same exercise and leg that is new for this leg. */
function heirOf({ id, exercise }: PrescribedExercise, side: Side, older: Prescription, newer: Prescription): string | undefined {
  if (hasLeg(newer, id, side)) return id;
  const goesOn = (each: PrescribedExercise) =>
    each.exercise === exercise && each.sides.includes(side) && !hasLeg(older, each.id, side);
  return newer.items.find(goesOn)?.id;
}

/** By leg and id, what lines of this plan and of those before are called in this plan; what is not there any more is left out. */
function namesNow(chain: readonly Prescription[]): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const [i, plan] of chain.entries()) {
    const newer = chain[i - 1];
    for (const item of plan.items)
      for (const side of item.sides) {
        const key = legKey(item.id, side);
        if (names.has(key)) continue;
        const heir = newer ? heirOf(item, side, plan, newer) : item.id;
        const now = newer && heir !== undefined ? names.get(legKey(heir, side)) : heir;
        if (now !== undefined) names.set(key, now);
      }
  }
  return names;
}

/** What a leg's line is called in this plan, under whatever id a plan before had it: its own id when it is not there any more. */
export function lineNow(prescription: Prescription, all: readonly Prescription[]): (itemId: string, side: Side) => string {
  const names = namesNow(chainOf(prescription, all));
  return (itemId, side) => names.get(legKey(itemId, side)) ?? itemId;
}

function renamed(log: DoseLog, prescription: Prescription): DoseLog {
  const chain = chainOf(prescription, log.prescriptions);
  const names = namesNow(chain);
  if ([...names].every(([key, now]) => key.startsWith(`${now} `))) return log;
  const now = (itemId: string, side: Side) => names.get(legKey(itemId, side)) ?? itemId;
  const done = log.done.map((set) => (set.itemId === null ? set : { ...set, itemId: now(set.itemId, set.side) }));
  const lineOfSet = new Map(done.map(({ id, itemId }) => [id, itemId]));
  const lines = new Map(chain.flatMap((plan) => plan.items.map((item) => [`${plan.id} ${item.id}`, item])));
  return {
    ...log,
    done,
    reports: log.reports.map((report) => {
      if (report.itemId === null) return report;
      const { itemId } = report;
      const [only, more] = new Set(SIDES.flatMap((side) => names.get(legKey(itemId, side)) ?? []));
      const ofLine = more === undefined ? (only ?? itemId) : itemId;
      return { ...report, itemId: lineOfSet.get(report.setId ?? '') ?? ofLine };
    }),
    steps: log.steps.flatMap((step) => {
      const item = lines.get(`${step.prescriptionId} ${step.itemId}`);
      const heirs = new Set(item?.sides.map((side) => now(item.id, side)) ?? [step.itemId]);
      return [...heirs].map((itemId) => ({ ...step, itemId }));
    }),
  };
}

/** Logs and plans never change, so that each is looked at once. */
const seen = new WeakMap<DoseLog, WeakMap<Prescription, DoseLog>>();

/**
 * The log as the lines of this plan see it. A plan that gives each leg a line of its own, or both one line again, gives some of them other ids; sets, what was
 * told of them and steps of the dose go on with the line that has their leg now. Unchanged where no id changed. Twice does the same as once for sets and reports.
 */
export function asLinesNow(log: DoseLog, prescription: Prescription): DoseLog {
  const plans = seen.get(log) ?? new WeakMap<Prescription, DoseLog>();
  seen.set(log, plans);
  const known = plans.get(prescription) ?? renamed(log, prescription);
  plans.set(prescription, known);
  return known;
}
