import { deg } from '../units.ts';

/** The knee limit of a leg raise where the therapist set none. Common practice. */
export const KNEE_LIMIT_DEG = deg(15);
