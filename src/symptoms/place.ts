import type { Side } from '../pose/landmarks.ts';

/**
 * Regions of back, leg and foot with how far from the spine they lie, in steps along the leg. Regions at one height have one number, so that a change
 * between them is no move up or down. The order is anatomy; the number of steps is chosen.
 */
export const DISTANCE_FROM_SPINE = {
  'low-back': 0,
  buttock: 1,
  groin: 1,
  'thigh-back': 2,
  'thigh-outer': 2,
  'thigh-front': 2,
  knee: 3,
  'calf-back': 4,
  'calf-outer': 4,
  shin: 4,
  ankle: 5,
  heel: 5,
  'foot-top': 6,
  sole: 6,
  'big-toe': 7,
  'small-toes': 7,
} as const satisfies Readonly<Record<string, number>>;

export type BodyRegion = keyof typeof DISTANCE_FROM_SPINE;

/** From the spine outwards. */
export const BODY_REGIONS = Object.keys(DISTANCE_FROM_SPINE) as readonly BodyRegion[];

/** One region of one side. The middle of the back is the low back of both sides. */
export interface Place {
  readonly region: BodyRegion;
  readonly side: Side;
}

export const distanceOf = ({ region }: Place): number => DISTANCE_FROM_SPINE[region];

/** The place furthest from the spine, on this side or on either; the first of several at one height. Null when there is none. */
export function mostDistant(places: readonly Place[], side?: Side): Place | null {
  let furthest: Place | null = null;
  for (const place of places) {
    if (side !== undefined && place.side !== side) continue;
    if (!furthest || distanceOf(place) > distanceOf(furthest)) furthest = place;
  }
  return furthest;
}
