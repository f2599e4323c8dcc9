import type { JointAngle } from '../angles/joint-angle.ts';
import type { PrescribedExerciseId } from '../dose/prescribed-exercise.ts';
import type { ExerciseId } from '../exercises/exercise.ts';
import type { Side } from '../pose/landmarks.ts';
import type { StoredSet } from '../record/stored-set.ts';
import type { BodyRegion } from '../symptoms/place.ts';

/** Regions where something is felt, and what moves. */
const REGIONS = {
  'low-back': 'low back',
  buttock: 'buttock',
  groin: 'groin',
  'thigh-back': 'back of the thigh',
  'thigh-outer': 'outside of the thigh',
  'thigh-front': 'front of the thigh',
  knee: 'knee',
  'calf-back': 'back of the calf',
  'calf-outer': 'outside of the calf',
  shin: 'shin',
  ankle: 'ankle',
  heel: 'heel',
  'foot-top': 'top of the foot',
  sole: 'sole',
  'big-toe': 'big toe',
  'small-toes': 'small toes',
  leg: 'leg',
  foot: 'foot',
} as const satisfies Readonly<Record<BodyRegion | 'leg' | 'foot', string>>;
export type SiteRegion = keyof typeof REGIONS;
const SIDES: readonly Side[] = ['left', 'right'];

/** Region and side in one code, since FHIR R4 has no element for the side of a body site. */
export const siteCode = (region: SiteRegion, side: Side): string => `${region}-${side}`;
export const siteName = (region: SiteRegion, side: Side): string => `${side} ${REGIONS[region]}`;

/** Every body site with its meaning, for the code system. */
export const BODY_SITES: readonly (readonly [code: string, display: string])[] = (Object.keys(REGIONS) as SiteRegion[]).flatMap(
  (region) => SIDES.map((side) => [siteCode(region, side), siteName(region, side)] as const),
);

const OF_ANGLE: Readonly<Record<JointAngle, SiteRegion>> = {
  'ankle-dorsiflexion': 'ankle',
  'leg-elevation': 'leg',
  'knee-flexion': 'knee',
  'foot-elevation': 'foot',
  'great-toe-extension': 'big-toe',
};
const OF_EXERCISE: Readonly<Record<ExerciseId | PrescribedExerciseId, SiteRegion>> = {
  'foot-tap': 'ankle',
  'leg-raise': 'leg',
  'nerve-glide': 'leg',
  'toe-lift': 'big-toe',
  'heel-stand': 'foot',
  'knee-straighten': 'knee',
};

/** What moves in an exercise. */
export const siteOfExercise = (exercise: ExerciseId | PrescribedExerciseId): SiteRegion => OF_EXERCISE[exercise];
/** What moves in a measured set. */
export const siteOfSet = ({ exercise, definition }: Pick<StoredSet, 'exercise' | 'definition'>): SiteRegion =>
  exercise === 'own' ? (definition ? OF_ANGLE[definition.angle] : 'leg') : OF_EXERCISE[exercise];
