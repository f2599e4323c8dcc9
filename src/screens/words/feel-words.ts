import type { SymptomKind } from '../../symptoms/felt.ts';
import type { BodyRegion } from '../../symptoms/place.ts';
import type { SymptomShift } from '../../symptoms/symptom-shift.ts';

/** Texts about what somebody feels. */
export interface FeelWords {
  readonly before: string;
  readonly after: string;
  readonly lead: string;
  readonly intensity: string;
  readonly none: string;
  readonly worst: string;
  readonly kindsTitle: string;
  readonly kinds: Record<SymptomKind, string>;
  readonly placesTitle: string;
  readonly placesHint: string;
  readonly drawing: string;
  readonly back: string;
  readonly front: string;
  readonly list: string;
  readonly regions: Record<BodyRegion, string>;
  readonly goOn: string;
  readonly keep: string;
  readonly skip: string;
  readonly shift: Record<SymptomShift['kind'], string>;
  readonly shiftTitle: string;
  readonly toToday: string;
  readonly afterCard: string;
  readonly checkIn: {
    readonly title: (day: string) => string;
    readonly worst: string;
    readonly afterwards: string;
    readonly how: Record<'no-flare' | 'settled' | 'not-settled', string>;
    readonly weakness: string;
    readonly strength: Record<'as-before' | 'worse', string>;
    readonly now: string;
    readonly keep: string;
  };
}
