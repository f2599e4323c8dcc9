import type { Speaker } from './speaker.ts';
import type { Tone, Tones } from './tones.ts';

/** All that is heard; silent while the sound is switched off. */
export interface Sounds {
  /** To be called from a click: browsers let a page sound only after one. */
  readonly unlock: () => void;
  /** Null says nothing. */
  readonly say: (text: string | null) => void;
  readonly play: (tone: Tone | null) => void;
  readonly hush: () => void;
}

export interface SoundsNeeds {
  readonly speaker: Speaker;
  readonly tones: Tones;
  readonly soundOn: () => boolean;
}

export const createSounds = ({ speaker, tones, soundOn }: SoundsNeeds): Sounds => ({
  unlock: tones.unlock,
  say(text) {
    if (text !== null && soundOn()) speaker.say(text);
  },
  play(tone) {
    if (tone !== null && soundOn()) tones.play(tone);
  },
  hush: speaker.hush,
});
