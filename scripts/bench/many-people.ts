import type { Page } from 'playwright-core';
import type { PersonFacts } from '../../src/dose/person-facts.ts';
import { DATABASE_NAME } from '../../src/record/database.ts';
import { FACTS_RULES } from '../../src/record/facts-row.ts';
import type { CalendarDay } from '../../src/symptoms/calendar-day.ts';

/** How full a practice's machine is. */
export interface ManyPeople {
  readonly people: number;
  readonly setsEach: number;
  /** False: what the list says of them is still to be worked out. */
  readonly withFacts: boolean;
  /** When the practice is looked at, ms since 1970; left out: now. */
  readonly nowMs?: number;
}

const DAY_MS = 86_400_000;
const dayBefore = (days: number, nowMs: number): CalendarDay =>
  new Date(nowMs - days * DAY_MS).toISOString().slice(0, 10) as CalendarDay;

/** Of every ten people one has a red flag, two a flare, one a step to take, and one has not been heard from. */
function factsOf(n: number, nowMs: number): PersonFacts {
  const kind = n % 10;
  const heard = dayBefore(kind === 4 ? 12 : 1, nowMs);
  return {
    lastActivity: heard,
    plan: { since: dayBefore(60, nowMs), lines: [{ exercise: 'foot-tap', sides: ['left'] }] },
    stop: kind === 0 ? { flags: ['bladder-bowel'], weakness: [], urgency: 'now' } : null,
    flare: kind === 1 || kind === 2 ? { day: heard, reason: 'further-down' } : null,
    steps: kind === 3 ? [{ exercise: 'foot-tap', sides: ['left'], aboutDay: heard, freshDays: 7 }] : [],
  };
}

/**
 * Writes invented people and their sets past the app into its database, which the open page has made. The sets have no result: the list is not to look
 * at them at all, and opening a person reads only theirs.
 */
export async function fillWithPeople(page: Page, { people, setsEach, withFacts, nowMs = Date.now() }: ManyPeople): Promise<void> {
  const facts = Array.from({ length: people }, (_, n) => (withFacts ? factsOf(n, nowMs) : null));
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.evaluate(
    async (order) => {
      const db = await new Promise<IDBDatabase>((done, failed) => {
        const opening = indexedDB.open(order.name);
        opening.onsuccess = () => done(opening.result);
        opening.onerror = () => failed(opening.error);
      });
      // Methods, since tsx wraps other inner functions in a helper that the page does not have.
      const make = {
        uuid(family: number, n: number) {
          return `00000000-0000-4000-8${family}00-${String(n).padStart(12, '0')}`;
        },
        written(fill: (tables: IDBTransaction) => void) {
          return new Promise<void>((done, failed) => {
            const writing = db.transaction(['people', 'facts', 'sets'], 'readwrite', { durability: 'relaxed' });
            writing.oncomplete = () => done();
            writing.onabort = () => failed(writing.error);
            fill(writing);
          });
        },
      };
      const added = new Date(order.now - 60 * order.dayMs).toISOString();
      for (const [n, known] of order.facts.entries()) {
        const person = make.uuid(1, n);
        await make.written((tables) => {
          tables.objectStore('people').put({
            id: person,
            schema: 1,
            name: `Invented ${n}`,
            affectedSide: n % 2 ? 'left' : 'right',
            notes: '',
            addedAt: added,
            changedAt: added,
            seenUntil: null,
          });
          if (known) tables.objectStore('facts').put({ person, rules: order.rules, facts: known });
          for (let i = 0; i < order.setsEach; i += 1) {
            tables.objectStore('sets').put({
              id: make.uuid(2, n * order.setsEach + i),
              schema: 2,
              startedAt: new Date(order.now - order.dayMs - i * 3_600_000).toISOString(),
              exercise: 'foot-tap',
              side: 'left',
              targetReps: 10,
              person,
              source: 'camera',
              model: 'full',
              state: 'finished',
            });
          }
        });
      }
      db.close();
    },
    { name: DATABASE_NAME, rules: FACTS_RULES, now: nowMs, dayMs: DAY_MS, facts, setsEach },
  );
}
