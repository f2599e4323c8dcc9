import type { Prescription } from '../../src/dose/prescription.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { entry } from '../symptoms/told.ts';
import { idOf } from './set-builders.ts';

/** A plan of one line, as a therapist writes it. */
export const therapistsPlan: Prescription = {
  ...entry(1, 9),
  kind: 'prescription',
  by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
  revises: null,
  items: [startingDose('foot-tap', idOf(60), ['left'])],
  selfChecks: { checks: [], sides: [], everyDays: 7 },
};
