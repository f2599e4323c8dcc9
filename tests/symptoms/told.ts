import type { AngleMark } from '../../src/symptoms/angle-mark.ts';
import type { CalendarDay } from '../../src/symptoms/calendar-day.ts';
import type { CheckIn } from '../../src/symptoms/check-in.ts';
import type { Clearance } from '../../src/symptoms/clearance.ts';
import type { Entry } from '../../src/symptoms/entry.ts';
import { RED_FLAG_IDS, type RedFlagAnswers } from '../../src/symptoms/red-flags.ts';
import type { SafetyLog } from '../../src/symptoms/safety-log.ts';
import type { SelfCheck } from '../../src/symptoms/self-check.ts';
import type { SymptomReport } from '../../src/symptoms/symptom-report.ts';
import { deg } from '../../src/units.ts';

/** Entries are told at a day of May 2026 and an hour of it, in UTC. */
export const dayOf = (n: number): CalendarDay => `2026-05-${String(n).padStart(2, '0')}` as CalendarDay;
export const momentOf = (n: number, hour: number): string => new Date(Date.UTC(2026, 4, n) + hour * 3_600_000).toISOString();

let made = 0;
export function entry(n: number, hour: number): Entry {
  made += 1;
  const id = `00000000-0000-4000-9000-${String(made).padStart(12, '0')}`;
  return { id, schema: 1, origin: 'own', at: momentOf(n, hour), day: dayOf(n) };
}

/** Nothing felt, before a set, unless said otherwise. */
export const report = (n: number, hour: number, over: Partial<SymptomReport> = {}): SymptomReport => ({
  ...entry(n, hour),
  kind: 'symptoms',
  moment: 'before-set',
  setId: null,
  itemId: null,
  intensity: 0,
  kinds: [],
  places: [],
  ...over,
});

/** A morning on which all is well, unless said otherwise. */
export const checkIn = (n: number, hour: number, over: Partial<CheckIn> = {}): CheckIn => ({
  ...entry(n, hour),
  kind: 'check-in',
  aboutDay: dayOf(n - 1),
  intensity: 0,
  kinds: [],
  places: [],
  worst: 0,
  afterwards: 'no-flare',
  weakness: 'as-before',
  ...over,
});

export function redFlags(n: number, hour: number, over: Partial<RedFlagAnswers['answers']> = {}): RedFlagAnswers {
  const no = Object.fromEntries(RED_FLAG_IDS.map((id) => [id, 'no'])) as RedFlagAnswers['answers'];
  return { ...entry(n, hour), kind: 'red-flags', answers: { ...no, ...over } };
}

export const clearance = (n: number, hour: number): Clearance => ({ ...entry(n, hour), kind: 'clearance', note: '' });

export const selfCheck = (n: number, hour: number, findings: SelfCheck['findings']): SelfCheck => ({
  ...entry(n, hour),
  kind: 'self-check',
  findings,
});

/** Where symptoms began on a leg that was lifted, unless said otherwise. */
export const angleMark = (n: number, hour: number, over: Partial<AngleMark> = {}): AngleMark => ({
  ...entry(n, hour),
  kind: 'angle-mark',
  exercise: 'leg-raise',
  side: 'left',
  mark: 'first-symptom',
  trial: 1,
  angleDeg: deg(48.25),
  zero: 'rest',
  errorDeg: deg(3.1),
  method: 'followed',
  from: 'file',
  foot: 'pulled-up',
  place: { region: 'calf-back', side: 'left' },
  sessionId: '00000000-0000-4000-8000-000000000007',
  ...over,
});

export const safetyLog = (over: Partial<SafetyLog> = {}): SafetyLog => ({
  redFlags: [],
  clearances: [],
  reports: [],
  checkIns: [],
  selfChecks: [],
  ...over,
});
