import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type PastProposal, proposalHistory } from '../../src/dose/proposal-history.ts';
import type { CalendarDay } from '../../src/symptoms/calendar-day.ts';
import { dayOf } from '../symptoms/told.ts';
import { days, exercise, lived } from './lived-days.ts';

const FIRST = dayOf(1);
const LAST = dayOf(12);
const covers = ({ firstDay, lastDay }: PastProposal, day: CalendarDay) => firstDay <= day && day <= lastDay;
const everyDay = Array.from({ length: 12 }, (_, i) => dayOf(i + 1));

test('every step agreed to is there once, with the very change that was proposed', () => {
  let taken = 0;
  fc.assert(
    fc.property(days, exercise, (plan, id) => {
      const { log } = lived(plan, id);
      const history = proposalHistory(log, FIRST, LAST);
      const steps = history.flatMap(({ answer }) => ('step' in answer ? [answer.step] : []));
      expect(steps).toEqual(log.steps);
      for (const { proposal, answer } of history) {
        if (answer.kind !== 'taken') continue;
        taken += 1;
        expect(proposal).toMatchObject({ kind: answer.step.direction, from: answer.step.from, to: answer.step.to });
      }
    }),
  );
  // The days made up do lead to steps: the loop looked at something.
  expect(taken).toBeGreaterThan(20);
});

test('never more than one step up is proposed on a day, and no day of the plan is without an entry', () => {
  fc.assert(
    fc.property(days, exercise, (plan, id) => {
      const history = proposalHistory(lived(plan, id).log, FIRST, LAST);
      for (const day of everyDay) {
        const ofDay = history.filter((past) => covers(past, day));
        expect(ofDay.length).toBeGreaterThan(0);
        expect(ofDay.filter(({ proposal }) => proposal.kind === 'up').length).toBeLessThanOrEqual(1);
      }
    }),
  );
});

test('a step that was taken is never told as one that was not', () => {
  fc.assert(
    fc.property(days, exercise, (plan, id) => {
      const history = proposalHistory(lived(plan, id).log, FIRST, LAST);
      for (const { answer } of history) {
        if (answer.kind !== 'taken') continue;
        const same = history.filter((past) => covers(past, answer.step.day) && past.answer.kind === 'not-taken');
        expect(same.filter(({ proposal }) => proposal.kind === answer.step.direction)).toEqual([]);
      }
    }),
  );
});

test('looked at in two parts it says the same of each day as in one', () => {
  const ofDays = (history: readonly PastProposal[]) =>
    everyDay.map((day) =>
      history.filter((past) => covers(past, day)).map(({ proposal, answer }) => [proposal.kind, answer.kind]),
    );
  fc.assert(
    fc.property(days, exercise, fc.integer({ min: 1, max: 11 }), (plan, id, cut) => {
      const { log } = lived(plan, id);
      const parts = [...proposalHistory(log, FIRST, dayOf(cut)), ...proposalHistory(log, dayOf(cut + 1), LAST)];
      expect(ofDays(parts)).toEqual(ofDays(proposalHistory(log, FIRST, LAST)));
    }),
  );
});
