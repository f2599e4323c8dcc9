import type { GlideCue } from '../../dose/glide-pace.ts';
import type { GlideMark } from '../set/glide-mark.ts';

/** Texts that only nerve glides need. Loaded with the screens that show them: see `glide-set-catalogues.ts`. */
export interface GlideSetWords {
  /** Said with the beat and written beside the drawing: short and calm. */
  readonly cue: Record<GlideCue, string>;
  /** While the two are held. */
  readonly hold: string;
  /** What the moving drawing shows. */
  readonly drawing: string;
  readonly pause: string;
  readonly play: string;
  /** Over the marks of the cycles. */
  readonly marks: string;
  /** What a cycle was. */
  readonly mark: Record<GlideMark, string>;
  /** The foot and the head now, in whole degrees; written on the picture. */
  readonly angles: (footDeg: string, headDeg: string) => string;
  /** The one big button: symptoms rise. */
  readonly symptoms: string;
  /** Before the set: what the signal is for. @param keys there is a keyboard to press */
  readonly signal: (keys: boolean) => string;
  /** How high the leg may be held: whole degrees, and the day on which that was marked. */
  readonly limit: (deg: string, day: string) => string;
  /** Which leg is to be where, before the set. */
  readonly near: string;
  readonly noLimit: string;
  /** Said before every set of glides, whatever the plan says. */
  readonly few: string;
  readonly beatKeys: string;
}
