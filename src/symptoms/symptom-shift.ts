import type { Side } from '../pose/landmarks.ts';
import { type Felt, placesOf } from './felt.ts';
import { distanceOf, mostDistant, type Place } from './place.ts';

/**
 * Whether symptoms moved between two reports. `centralising`: the most distant place came nearer to the spine, or is gone; `peripheralising`: it
 * moved on toward the foot, or is new. Of two legs that disagree the worse one counts. `unknown`: one of the two reports names no places.
 * After Aina A, May S, Clare H 2004, Man Ther 9:134 (abstract read): where the most distant symptoms are is what counts, not how strong they are.
 */
export type SymptomShift =
  | { readonly kind: 'centralising' | 'peripheralising' | 'unchanged'; readonly from: Place | null; readonly to: Place | null }
  | { readonly kind: 'unknown' };

const NOWHERE = -1;
const SIDES: readonly Side[] = ['left', 'right'];

type WherePlaced = Pick<Felt, 'intensity' | 'places'>;

/** From the earlier to the later report. */
export function symptomShift(earlier: WherePlaced, later: WherePlaced): SymptomShift {
  const before = placesOf(earlier);
  const after = placesOf(later);
  if (!before || !after) return { kind: 'unknown' };
  const moves = SIDES.map((side) => {
    const from = mostDistant(before, side);
    const to = mostDistant(after, side);
    return { from, to, steps: reach(to) - reach(from) };
  });
  const outwards = moves.filter(({ steps }) => steps > 0);
  const inwards = moves.filter(({ steps }) => steps < 0);
  const largest = (outwards.length > 0 ? outwards : inwards).toSorted((a, b) => Math.abs(b.steps) - Math.abs(a.steps))[0];
  if (largest) return { kind: largest.steps > 0 ? 'peripheralising' : 'centralising', from: largest.from, to: largest.to };
  return { kind: 'unchanged', from: mostDistant(before), to: mostDistant(after) };
}

const reach = (place: Place | null): number => (place ? distanceOf(place) : NOWHERE);
