import type { NotAnswered } from './entry.ts';
import type { Place } from './place.ts';

export const SYMPTOM_KINDS = ['pain', 'tingling', 'numbness', 'weakness'] as const;
export type SymptomKind = (typeof SYMPTOM_KINDS)[number];

/** The numeric rating scale: whole numbers, 0 nothing, 10 the worst imaginable. */
export const MOST_INTENSITY = 10;

/** What somebody feels at one moment. */
export interface Felt {
  /** Whole, 0 to `MOST_INTENSITY`. */
  readonly intensity: number | NotAnswered;
  /** Empty: none of them. */
  readonly kinds: readonly SymptomKind[] | NotAnswered;
  /** Empty: nowhere. */
  readonly places: readonly Place[] | NotAnswered;
}

/** Where it is felt; nowhere when there is nothing to feel, null when nobody said. */
export function placesOf({ intensity, places }: Pick<Felt, 'intensity' | 'places'>): readonly Place[] | null {
  if (places !== 'not-answered') return places;
  return intensity === 0 ? [] : null;
}
