import type { Side } from '../pose/landmarks.ts';
import { byMoment, type Entry } from '../symptoms/entry.ts';
import type { SelfCheckId } from '../symptoms/self-check.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';

/** What somebody is to do, immutable: a change is a new one, and the newest holds. */
export interface Prescription extends Entry {
  readonly kind: 'prescription';
  /** Who decided; the name may be empty. `patient`: made by oneself from the doses offered. */
  readonly by: { readonly role: 'therapist' | 'patient'; readonly name: string };
  /** When its author wrote it, of a plan that came from elsewhere; `at` is when it was taken on. Left out: it was written here, at `at`. */
  readonly writtenAt?: string;
  /** The prescription that this one revises; null for the first. */
  readonly revises: string | null;
  readonly items: readonly PrescribedExercise[];
  /** Checks of strength to repeat; none when `checks` is empty. */
  readonly selfChecks: { readonly checks: readonly SelfCheckId[]; readonly sides: readonly Side[]; readonly everyDays: number };
}

/** The one that holds: the newest. Null when there is none. */
export const currentPrescription = (all: readonly Prescription[]): Prescription | null => all.toSorted(byMoment).at(-1) ?? null;
