import type { Entry } from '../symptoms/entry.ts';
import type { Prescription } from './prescription.ts';

/** A plan on its way from one who wrote it to one who does it. No name but that of who decided, which may be empty. */
export interface GivenPlan extends Pick<Prescription, 'id' | 'origin' | 'by' | 'revises' | 'items' | 'selfChecks'> {
  /** When its author wrote it: ISO 8601, UTC, with milliseconds. */
  readonly writtenAt: string;
}

const writtenAtOf = ({ writtenAt, at }: Pick<Prescription, 'writtenAt' | 'at'>): string => writtenAt ?? at;

/** What of a prescription is given away. Given on, a plan keeps the moment at which it was written. */
export function givenPlan(prescription: Prescription): GivenPlan {
  const { id, origin, by, revises, items, selfChecks } = prescription;
  return { id, writtenAt: writtenAtOf(prescription), origin, by, revises, items, selfChecks };
}

/** The same without the name of who decided. */
export const withoutName = (plan: GivenPlan): GivenPlan => ({ ...plan, by: { ...plan.by, name: '' } });

/**
 * The plan as an entry of the diary of who takes it on. It keeps its id, so that it is there once at most; it counts from the moment on at which it was taken, so
 * that it holds from then on and the questions come before its first set.
 */
export const takenOn = ({ writtenAt, ...plan }: GivenPlan, { at, day }: Pick<Entry, 'at' | 'day'>): Prescription => ({
  ...plan,
  kind: 'prescription',
  schema: 1,
  at,
  day,
  writtenAt,
});

/**
 * How a plan stands to those that are here. `held`: it was taken on before, and taking it again would change nothing. `older`: a therapist's plan that was written
 * later is here, or one that revises it; `writtenAt` is that one's moment.
 */
export type Standing =
  | { readonly kind: 'new' }
  | { readonly kind: 'held' }
  | { readonly kind: 'older'; readonly writtenAt: string };

/**
 * Whether a plan here can make a given one older. What somebody decided for themselves makes no therapist's plan older; among such plans, only one that was taken
 * on does, as one version after another from the same hand.
 */
const canMakeOlder = ({ by }: Pick<GivenPlan, 'by'>, here: Prescription): boolean =>
  here.origin === 'own' && (here.by.role === 'therapist' || (by.role === 'patient' && here.writtenAt !== undefined));

export function standingOf(plan: Pick<GivenPlan, 'id' | 'writtenAt' | 'by'>, here: readonly Prescription[]): Standing {
  if (here.some(({ id }) => id === plan.id)) return { kind: 'held' };
  const later = here
    .filter((held) => canMakeOlder(plan, held) && (held.revises === plan.id || writtenAtOf(held) > plan.writtenAt))
    .map(writtenAtOf)
    .toSorted()
    .at(-1);
  return later === undefined ? { kind: 'new' } : { kind: 'older', writtenAt: later };
}
