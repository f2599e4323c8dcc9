/** A plan that gives each leg a line of its own, and what was done and told under the plan before. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { DoseLog } from '../../src/dose/dose-log.ts';
import { legGroups, needsLeg } from '../../src/dose/leg-groups.ts';
import { asLinesNow, lineNow } from '../../src/dose/lines-now.ts';
import type { PrescribedExercise } from '../../src/dose/prescribed-exercise.ts';
import type { Prescription } from '../../src/dose/prescription.ts';
import { prescriptionReminders } from '../../src/dose/prescription-reminders.ts';
import { progress } from '../../src/dose/progress.ts';
import { propose } from '../../src/dose/propose.ts';
import { today } from '../../src/dose/today.ts';
import { deg } from '../../src/units.ts';
import { checkIn, dayOf, momentOf, report } from '../symptoms/told.ts';
import { done, doseLog, itemId, line, prescription, step } from './plan.ts';

const both = line('foot-tap', { sides: ['left', 'right'] }, 1);
const left = { ...both, sides: ['left'] as const };
const right = {
  ...line('foot-tap', { sides: ['right'] }, 2),
  start: { setsADay: 2, repsASet: 8, holdS: 0 },
  target: { kind: 'range', fromDeg: deg(5), toDeg: deg(10) },
} as const satisfies PrescribedExercise;
const whole = prescription(both);
/** Written on the third of May, before noon. */
const revision = (before: Prescription, ...items: readonly PrescribedExercise[]): Prescription => ({
  ...prescription(...items),
  id: `${before.id}-revised`,
  day: dayOf(3),
  at: momentOf(3, 12),
  revises: before.id,
});
const split = revision(whole, left, right);
const seen = (log: Partial<DoseLog>, n: number, hour: number) => {
  const found = today(doseLog(log), { nowMs: Date.parse(momentOf(n, hour)), timeZone: 'UTC' });
  if (!found) throw new Error('expected a prescription');
  return found;
};
const onRight = (n: number, hour: number, item: PrescribedExercise = both) => done(item, n, hour, { side: 'right' });

describe('two lines of one exercise', () => {
  test('have each its own dose, count and target today', () => {
    const { lines } = seen(
      { prescriptions: [split], done: [done(left, 4, 8), onRight(4, 9, right), onRight(4, 14, right)] },
      4,
      20,
    );
    expect(lines.map(({ side, dose, done: sets, state }) => [side, dose.repsASet, sets.length, state])).toEqual([
      ['left', 15, 1, 'now'],
      ['right', 8, 2, 'done'],
    ]);
  });

  test('take sets that nobody said the line of by their leg', () => {
    const { lines } = seen({ prescriptions: [split], done: [done(left, 4, 8, { itemId: null }), onRight(4, 9, right)] }, 4, 20);
    expect(lines.map(({ done: sets }) => sets.length)).toEqual([1, 1]);
  });

  test('are judged each by its own sets: one may go up while the other did too little', () => {
    const good = [report(3, 8, { itemId: left.id }), report(3, 9, { itemId: left.id, moment: 'after-set' })];
    const told = [...good, report(3, 10, { itemId: right.id }), report(3, 11, { itemId: right.id, moment: 'after-set' })];
    const log = doseLog({
      prescriptions: [split],
      reports: told,
      checkIns: [checkIn(4, 8)],
      done: [...[8, 12, 16].map((hour) => done(left, 3, hour)), onRight(3, 10, right)],
    });
    expect(propose(split, left, log, dayOf(4))).toMatchObject({ kind: 'up', to: { repsASet: 20 } });
    expect(propose(split, right, log, dayOf(4))).toMatchObject({
      kind: 'hold',
      reason: { kind: 'dose-not-done', reps: 8, due: 16 },
    });
  });

  test('are looked back on each with its own target', () => {
    const log = doseLog({ prescriptions: [split], done: [onRight(3, 9, right)] });
    expect(progress(log, dayOf(4), 2)?.lines.map(({ side, setsDue, item }) => [side, setsDue, item.target.kind])).toEqual([
      ['left', 6, 'full'],
      ['right', 4, 'range'],
    ]);
  });

  test('have reminders with names of their own', () => {
    const reminders = prescriptionReminders(split, { steps: [] }, dayOf(4), ({ sides }) => ({
      summary: sides.join(),
      description: '',
    }));
    expect(new Set(reminders.map(({ uid }) => uid)).size).toBe(3 + 2);
  });

  test('stand in one group, need their leg’s name, and a leg named twice makes two groups', () => {
    const stand = line('heel-stand', {}, 3);
    const again = { ...left, id: itemId(4) };
    expect(legGroups([left, stand, right, again])).toEqual([[left, right], [stand], [again]]);
    expect([left, right, stand].map((item) => needsLeg(item, [left, right, stand]))).toEqual([true, true, false]);
  });
});

describe('sets done before', () => {
  test('a line was parted by legs go on with the line that has their leg, on the same day too', () => {
    const { lines } = seen({ prescriptions: [whole, split], done: [done(both, 3, 8), onRight(3, 9)] }, 3, 20);
    expect(lines.map(({ item, done: sets }) => [item.id, sets.length])).toEqual([
      [left.id, 1],
      [right.id, 1],
    ]);
  });

  test('two lines became one again go on with the one', () => {
    const merged = { ...revision(split, { ...right, sides: ['left', 'right'] }), day: dayOf(4), at: momentOf(4, 0) };
    const sets = [done(both, 2, 8), onRight(2, 9), done(left, 3, 13), onRight(3, 13, right)];
    const { lines } = seen({ prescriptions: [whole, split, merged], done: sets }, 4, 20);
    expect(lines.map(({ side, item }) => [side, item.id])).toEqual([
      ['left', right.id],
      ['right', right.id],
    ]);
    expect(progress(doseLog({ prescriptions: [whole, split, merged], done: sets }), dayOf(4), 4)?.lines).toMatchObject([
      { setsDue: 3 + 3 + 3 + 2, setsDoneOfDue: 2 },
      { setsDue: 3 + 3 + 2 + 2, setsDoneOfDue: 2 },
    ]);
  });

  test('belong to no line that another plan, which revises nothing, names otherwise', () => {
    const other = { ...prescription(line('foot-tap', {}, 7)), id: 'other', at: momentOf(3, 12), day: dayOf(3) };
    const { lines } = seen({ prescriptions: [whole, other], done: [done(both, 3, 8)] }, 3, 20);
    expect(lines[0]?.done).toEqual([]);
  });

  test('of a line that was taken out, and came back later as another, are not its', () => {
    const without = revision(whole, line('heel-stand', {}, 5));
    const anew = { ...revision(without, line('foot-tap', {}, 6)), day: dayOf(4), at: momentOf(4, 0) };
    const { lines } = seen({ prescriptions: [whole, without, anew], done: [done(both, 4, 8)] }, 4, 20);
    expect(lines[0]?.done).toEqual([]);
  });
});

test('a step that both legs took on the day they were parted holds for either of the new lines', () => {
  const stepped = step(whole, both, 3, { direction: 'back', aboutDay: dayOf(2), reason: 'clear-rise' });
  const told = [
    report(2, 8, { itemId: both.id, intensity: 1 }),
    report(2, 9, { itemId: both.id, moment: 'after-set', intensity: 5 }),
  ];
  const log = doseLog({
    prescriptions: [whole, split],
    reports: told,
    steps: [stepped],
    done: [done(both, 2, 9), onRight(2, 9)],
  });
  expect(propose(split, left, log, dayOf(3))).toMatchObject({ kind: 'hold', reason: { kind: 'already-judged' } });
  expect(propose(split, right, log, dayOf(3))).toMatchObject({ kind: 'hold', reason: { kind: 'changed-today' } });
});

test('what was told after a set goes with its set to the line of its leg', () => {
  const set = onRight(2, 9);
  const told = report(2, 10, { itemId: both.id, moment: 'after-set', setId: set.id, intensity: 8 });
  const log = doseLog({
    prescriptions: [whole, split],
    reports: [report(2, 8, { intensity: 1 }), told],
    done: [set, done(both, 2, 9)],
  });
  expect(propose(split, right, log, dayOf(3))).toMatchObject({ kind: 'back', reason: { kind: 'clear-rise' } });
  expect(propose(split, left, log, dayOf(3))).toMatchObject({ kind: 'hold' });
});

/** Plans of foot taps one after another: each has lines for some legs, parted or not, under old names or new ones. */
const chain = fc.array(fc.record({ parted: fc.boolean(), keep: fc.boolean() }), { minLength: 1, maxLength: 6 }).map((shapes) => {
  let made = 0;
  const fresh = () => {
    made += 1;
    return itemId(made);
  };
  let ids: readonly string[] = [];
  return shapes.map(({ parted, keep }, i): Prescription => {
    const [one = fresh(), other = fresh()] = keep ? ids : [];
    ids = parted ? [one, other] : [one];
    const items = parted
      ? [line('foot-tap', { id: one, sides: ['left'] }), line('foot-tap', { id: other, sides: ['right'] })]
      : [line('foot-tap', { id: one, sides: ['left', 'right'] })];
    return { ...prescription(...items), id: `plan-${i}`, revises: i === 0 ? null : `plan-${i - 1}`, at: momentOf(i + 1, 0) };
  });
});

test('however often legs are parted and joined, no set of either leg is lost or counted twice', () => {
  fc.assert(
    fc.property(chain, (plans) => {
      const last = plans.at(-1) as Prescription;
      const sets = plans.flatMap(({ items }) => items.flatMap((item) => item.sides.map((side) => done(item, 1, 9, { side }))));
      const log = doseLog({ prescriptions: plans, done: sets });
      const name = lineNow(last, plans);
      const now = asLinesNow(log, last);
      for (const side of ['left', 'right'] as const) {
        const item = last.items.find(({ sides }) => (sides as readonly string[]).includes(side));
        const ofSide = now.done.filter((set) => set.side === side);
        expect(new Set(ofSide.map((set) => set.itemId))).toEqual(new Set([item?.id]));
        expect(ofSide).toHaveLength(plans.length);
        expect(new Set(sets.filter((set) => set.side === side).map((set) => name(String(set.itemId), side)))).toEqual(
          new Set([item?.id]),
        );
      }
      expect(asLinesNow(now, last).done).toEqual(now.done);
    }),
  );
});
