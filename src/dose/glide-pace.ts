import { type Deg, deg } from '../units.ts';
import { type Beat, outAt, type Pace, type PaceMoment } from './pace.ts';

/** Seconds for one cycle of a glide where none are prescribed. Chosen: as `starting-doses.ts` offers it, slow enough for the two movements to be done together. */
export const GLIDE_TEMPO_S = 4;

/** The pace of a set of glides. @param tempoS null: none is prescribed */
export const glidePace = ({ tempoS, holdS }: { readonly tempoS: number | null; readonly holdS: number }): Pace => ({
  tempoS: tempoS ?? GLIDE_TEMPO_S,
  holdS,
});

/** What foot and head do in a beat, both at once. `point`: the foot points, the head lifts. `pull`: the head goes down, the foot pulls up. */
export type GlideCue = 'point' | 'pull';

/** The cue that a beat begins with; none while it is held. */
export const cueOf = (beat: Beat): GlideCue | null => (beat === 'out' ? 'point' : beat === 'back' ? 'pull' : null);

/** Where foot and head should be. */
export interface GlideAngles {
  /** Dorsiflexion, up positive, as the ankle's angle is everywhere. */
  readonly footDeg: Deg;
  /** The head's lift from where it rests. */
  readonly headDeg: Deg;
}

/** The two ends of the drawn movement. Chosen: larger than most people's, to be told apart from three metres. */
export const GLIDE_ENDS = {
  pulled: { footDeg: deg(15), headDeg: deg(0) },
  pointed: { footDeg: deg(-40), headDeg: deg(40) },
} as const satisfies Record<string, GlideAngles>;

/** Where foot and head should be at a moment of the pace: a slide, the head up exactly as far as the foot is pointed. */
export function glideAngles(moment: Pick<PaceMoment, 'beat' | 'share'>): GlideAngles {
  const out = outAt(moment);
  const { pulled, pointed } = GLIDE_ENDS;
  const between = (from: Deg, to: Deg) => deg(from + out * (to - from));
  return { footDeg: between(pulled.footDeg, pointed.footDeg), headDeg: between(pulled.headDeg, pointed.headDeg) };
}
