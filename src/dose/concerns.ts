import { type CalendarDay, daysBetween } from '../symptoms/calendar-day.ts';
import { mayExercise, type Stop } from '../symptoms/may-exercise.ts';
import type { FlareReason } from './day-verdict.ts';
import type { DoseLog } from './dose-log.ts';
import { type FlareDay, flareDays } from './flare-days.ts';
import type { PrescribedExercise } from './prescribed-exercise.ts';
import { currentPrescription } from './prescription.ts';
import { propose } from './propose.ts';

/** After so many days without a set it is said. Chosen, as the days after which a good day is too old for a step up (`freshDays`). */
const STILL_DAYS = 3;

/** One thing to look at before all else. */
export type Concern =
  /** A warning sign, or weakness that is new or worse, and no clearance since. */
  | { readonly kind: 'stopped'; readonly stop: Stop }
  /** A flare on the least dose: the person was told to contact the therapist. */
  | { readonly kind: 'contact'; readonly item: PrescribedExercise; readonly reason: FlareReason }
  /** The last day that flared, and how many did. */
  | { readonly kind: 'flares'; readonly last: FlareDay; readonly days: number }
  /** Nothing was done for so many days, since `lastDay`; null: never in what is known. */
  | { readonly kind: 'quiet'; readonly days: number; readonly lastDay: CalendarDay | null };

/** What to look at first, the gravest first, over the days from `from` to `to`, both included. Empty without a plan and without a stop. */
export function concernsIn(log: DoseLog, from: CalendarDay, to: CalendarDay): readonly Concern[] {
  const found: Concern[] = [];
  const gate = mayExercise(log, to);
  if (gate.kind === 'stopped') found.push({ kind: 'stopped', stop: gate });
  const prescription = currentPrescription(log.prescriptions);
  for (const item of prescription?.items ?? []) {
    const proposal = prescription && propose(prescription, item, log, to);
    if (proposal?.kind === 'contact') found.push({ kind: 'contact', item, reason: proposal.reason });
  }
  const flares = flareDays(log, from, to);
  const last = flares.at(-1);
  if (last) found.push({ kind: 'flares', last, days: flares.length });
  if (!prescription) return found;
  const lastDay =
    log.done
      .flatMap((set) => (set.reps > 0 && set.day <= to ? [set.day] : []))
      .toSorted()
      .at(-1) ?? null;
  const days = daysBetween(lastDay ?? prescription.day, to);
  if (days > STILL_DAYS) found.push({ kind: 'quiet', days, lastDay });
  return found;
}
