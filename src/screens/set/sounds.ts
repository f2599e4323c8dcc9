import type { Speaker } from './speaker.ts';
import type { Tone, Tones } from './tones.ts';
import { createVoice, type VoiceRank } from './voice.ts';

/** All that is heard; silent while the sound is switched off. */
export interface Sounds {
  /** To be called from a click: browsers let a page sound only after one. */
  readonly unlock: () => void;
  /** Null says nothing. @param rank how much it matters; left out: as much as a count */
  readonly say: (text: string | null, rank?: VoiceRank) => void;
  readonly play: (tone: Tone | null) => void;
  readonly hush: () => void;
}

export interface SoundsNeeds {
  readonly speaker: Speaker;
  readonly tones: Tones;
  readonly soundOn: () => boolean;
  /** Any clock that only goes on, ms. */
  readonly now: () => number;
}

export function createSounds({ speaker, tones, soundOn, now }: SoundsNeeds): Sounds {
  const voice = createVoice(speaker, now);
  return {
    unlock: tones.unlock,
    say(text, rank = 'count') {
      if (text !== null && soundOn()) voice.say(text, rank);
    },
    play(tone) {
      if (tone !== null && soundOn()) tones.play(tone);
    },
    hush: voice.hush,
  };
}
