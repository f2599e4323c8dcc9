import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import type { DiaryEntry } from '../../src/record/diary-entry.ts';
import { newId } from '../../src/record/new-id.ts';
import { encodePlanCode } from '../../src/record/plan-transfer.ts';
import { deg } from '../../src/units.ts';
import { wentWell } from '../record/went-well.ts';
import { daysAgo } from './diary-builder.ts';
import { fakeServices } from './fake-services.ts';

/** A plan of an invented therapist, written so many days ago. */
export const writtenAgo = (days: number, over: Partial<Prescription> = {}): Prescription => ({
  ...daysAgo(days),
  kind: 'prescription',
  by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
  revises: null,
  items: [
    { ...startingDose('heel-stand', newId(), ['left']), symptomLimit: 4 },
    { ...startingDose('foot-tap', newId(), ['left', 'right']), target: { kind: 'range', fromDeg: deg(5), toDeg: deg(15) } },
  ],
  selfChecks: { checks: [], sides: [], everyDays: 7 },
  ...over,
});
/** What a link to it holds. */
export const codeOf = (plan: Prescription) => wentWell(encodePlanCode(plan, { named: true }));

/** The app's services for somebody with these entries. */
export function withDiary(...entries: readonly DiaryEntry[]) {
  const fake = fakeServices();
  fake.entries.push(...entries);
  return fake;
}
