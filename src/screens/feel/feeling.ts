import type { Felt, SymptomKind } from '../../symptoms/felt.ts';
import type { Place } from '../../symptoms/place.ts';

/** Nothing has been said yet. */
export const UNSAID: Felt = { intensity: 'not-answered', kinds: 'not-answered', places: 'not-answered' };

const samePlace = (a: Place, b: Place): boolean => a.region === b.region && a.side === b.side;

export const hasPlace = ({ places }: Felt, place: Place): boolean =>
  places !== 'not-answered' && places.some((each) => samePlace(each, place));

/** The place put in, or taken out again. */
export function withPlace(felt: Felt, place: Place): Felt {
  const known = felt.places === 'not-answered' ? [] : felt.places;
  return { ...felt, places: hasPlace(felt, place) ? known.filter((each) => !samePlace(each, place)) : [...known, place] };
}

export const hasKind = ({ kinds }: Felt, kind: SymptomKind): boolean => kinds !== 'not-answered' && kinds.includes(kind);

/** The kind put in, or taken out again. */
export function withKind(felt: Felt, kind: SymptomKind): Felt {
  const known = felt.kinds === 'not-answered' ? [] : felt.kinds;
  return { ...felt, kinds: hasKind(felt, kind) ? known.filter((each) => each !== kind) : [...known, kind] };
}

/** Who says how strong it is and ticks nothing has said that there is none of it: both are answers once the strength is told. */
export const answered = (felt: Felt): Felt =>
  felt.intensity === 'not-answered'
    ? felt
    : {
        ...felt,
        kinds: felt.kinds === 'not-answered' && felt.intensity === 0 ? [] : felt.kinds,
        places: felt.places === 'not-answered' && felt.intensity === 0 ? [] : felt.places,
      };
