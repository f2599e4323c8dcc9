import type { Limit } from '../services.ts';

/** What is said when a set has no pictures for a while, and on machines that do it less well. */
export interface AwayWords {
  /** The set waits for its camera. */
  readonly kept: string;
  /** The part that sees the leg has stopped and is being started again. */
  readonly restarting: string;
  /** In the banner, read from afar, while there is no picture. */
  readonly banner: string;
  readonly goOn: string;
  readonly backVoice: string;
  /** Nothing was looked at for a while. */
  readonly pause: string;
  /** The screen can't be kept on. */
  readonly screenDims: string;
  /** So few pictures a second are looked at that quick movements are missed. */
  readonly fewPictures: string;
  /** While a set runs: nothing of it can be written. */
  readonly notStored: Readonly<Record<'full' | 'failed', string>>;
  readonly limits: Readonly<Record<Limit, string>>;
}
