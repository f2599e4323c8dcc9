import { deflateSync } from 'fflate';
import { PRESCRIBED_EXERCISE_IDS } from '../../src/dose/prescribed-exercise.ts';
import type { Prescription } from '../../src/dose/prescription.ts';
import { crc32 } from '../../src/record/crc32.ts';
import { PLAN_DICTIONARY } from '../../src/record/plan-dictionary.ts';
import type { PlanError } from '../../src/record/plan-error.ts';
import { decodePlan, encodePlan, encodePlanCode } from '../../src/record/plan-transfer.ts';
import { line, prescription } from '../dose/plan.ts';
import { wentWell } from './went-well.ts';

export const BASE64URL = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_';
export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

export const plan: Prescription = {
  ...prescription(...PRESCRIBED_EXERCISE_IDS.map((id, n) => line(id, { sides: ['left', 'right'] }, n + 1))),
  by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
};
export const file = wentWell(encodePlan(plan));
export const code = wentWell(encodePlanCode(plan, { named: true }));

/** A code as the format says it is made, from any bytes. */
export const codeOf = (content: Uint8Array, version = 1): string => {
  const head = Buffer.alloc(5);
  head[0] = version;
  head.writeUInt32BE(crc32(Uint8Array.of(version, ...content)), 1);
  return Buffer.concat([head, content]).toString('base64url');
};
export const deflated = (text: string): Uint8Array => deflateSync(bytesOf(text), { dictionary: bytesOf(PLAN_DICTIONARY) });
export const errorOf = (text: string): PlanError | null => {
  const found = decodePlan(text);
  return found.ok ? null : found.error;
};
/** The file with one thing changed. */
export const changed = (change: (plan: Record<string, unknown>, whole: Record<string, unknown>) => void): string => {
  const whole = JSON.parse(file);
  change(whole.plan, whole);
  return JSON.stringify(whole);
};
