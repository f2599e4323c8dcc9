/** What a sound tells. */
export type Tone = 'ready' | 'complete' | 'partial' | 'lost' | 'ended' | 'up' | 'down' | 'second' | 'rested';

export interface Tones {
  /** To be called from a click: browsers let a page sound only after one. */
  readonly unlock: () => void;
  readonly play: (tone: Tone) => void;
}

interface Note {
  readonly hz: number;
  readonly startS: number;
  readonly lengthS: number;
}

/** Rising is good, falling is not, one low note is a small movement. Chosen: below 1 kHz, which old ears still hear well. */
const NOTES: Record<Tone, readonly Note[]> = {
  ready: [
    { hz: 523, startS: 0, lengthS: 0.14 },
    { hz: 784, startS: 0.15, lengthS: 0.26 },
  ],
  complete: [{ hz: 784, startS: 0, lengthS: 0.16 }],
  partial: [{ hz: 262, startS: 0, lengthS: 0.22 }],
  lost: [
    { hz: 392, startS: 0, lengthS: 0.18 },
    { hz: 294, startS: 0.2, lengthS: 0.28 },
  ],
  ended: [
    { hz: 523, startS: 0, lengthS: 0.16 },
    { hz: 659, startS: 0.17, lengthS: 0.16 },
    { hz: 784, startS: 0.34, lengthS: 0.4 },
  ],
  // The beat: short, so that it never covers the count.
  up: [{ hz: 659, startS: 0, lengthS: 0.07 }],
  down: [{ hz: 440, startS: 0, lengthS: 0.07 }],
  second: [{ hz: 587, startS: 0, lengthS: 0.06 }],
  rested: [
    { hz: 523, startS: 0, lengthS: 0.16 },
    { hz: 659, startS: 0.17, lengthS: 0.3 },
  ],
};

/** Chosen: loud enough from three metres at a usual setting, not startling. */
const GAIN = 0.22;
/** How fast a note comes and goes, s: no click. */
const EDGE_S = 0.02;

function sound(context: AudioContext, note: Note): void {
  const from = context.currentTime + note.startS;
  const until = from + note.lengthS;
  const tone = context.createOscillator();
  const gain = context.createGain();
  tone.frequency.value = note.hz;
  gain.gain.setValueAtTime(0, from);
  gain.gain.linearRampToValueAtTime(GAIN, from + EDGE_S);
  gain.gain.setValueAtTime(GAIN, until - EDGE_S);
  gain.gain.linearRampToValueAtTime(0, until);
  tone.connect(gain).connect(context.destination);
  tone.start(from);
  tone.stop(until);
}

/** Short tones through Web Audio; silent where there is none. */
export function webTones(): Tones {
  let context: AudioContext | null = null;
  return {
    unlock() {
      if (typeof AudioContext === 'undefined') return;
      context ??= new AudioContext();
      // Refused without a click: then the tones stay silent, the screen shows the same.
      context.resume().catch(() => undefined);
    },
    play(tone) {
      if (context?.state !== 'running') return;
      for (const note of NOTES[tone]) sound(context, note);
    },
  };
}
