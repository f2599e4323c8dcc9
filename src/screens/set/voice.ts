import type { Speaker } from './speaker.ts';

/**
 * How much something said matters, least first. `cue`: what to do next, with the beat; `count`: the count and all else that tells where the set stands;
 * `wrong`: a correction, or what is not seen; `end`: that the set is over, and why.
 */
export const VOICE_RANKS = ['cue', 'count', 'wrong', 'end'] as const;
export type VoiceRank = (typeof VOICE_RANKS)[number];

/** A cue that had to wait this long comes too late for its beat, ms. Chosen: the voice says a number in less. */
export const CUE_WAITS_MS = 700;

/** The one voice: never two things at once. */
export interface Voice {
  readonly say: (text: string, rank: VoiceRank) => void;
  readonly hush: () => void;
}

interface Said {
  readonly text: string;
  readonly rank: VoiceRank;
  readonly atMs: number;
}

const above = (a: VoiceRank, b: VoiceRank): boolean => VOICE_RANKS.indexOf(a) > VOICE_RANKS.indexOf(b);

/**
 * Says one thing after the other.
 * - What is said is cut short by the same rank (an old count is worth nothing) and by the end; a cue also by a correction.
 * - What is short is waited for: a correction waits for a count, a count for a cue, a cue for a count. One thing waits, the one that matters more.
 * - A count waits for a correction; a cue does not, and after each correction and end one cue is left out.
 * @param nowMs any clock that only goes on
 */
export function createVoice(speaker: Speaker, nowMs: () => number): Voice {
  let current: Said | null = null;
  let waiting: Said | null = null;
  let cueOwed = false;

  const speak = (said: Said) => {
    current = said;
    speaker.say(said.text, () => {
      if (current !== said) return;
      current = null;
      const next = waiting;
      waiting = null;
      if (next && (next.rank !== 'cue' || nowMs() - next.atMs <= CUE_WAITS_MS)) speak(next);
    });
  };

  const wait = (said: Said) => {
    if (!waiting || !above(waiting.rank, said.rank)) waiting = said;
  };

  const sayCue = (said: Said) => {
    const leftOut = cueOwed;
    cueOwed = false;
    if (leftOut || current?.rank === 'wrong' || current?.rank === 'end') return;
    if (current?.rank === 'count') wait(said);
    else speak(said);
  };

  return {
    say(text, rank) {
      const said: Said = { text, rank, atMs: nowMs() };
      if (rank === 'cue') return sayCue(said);
      if (rank !== 'count') cueOwed = true;
      if (rank === 'end') waiting = null;
      else if (current?.rank === 'end') return;
      const cuts = !current || current.rank === rank || rank === 'end' || (rank === 'wrong' && current.rank === 'cue');
      if (cuts) speak(said);
      else wait(said);
    },
    hush() {
      current = null;
      waiting = null;
      cueOwed = false;
      speaker.hush();
    },
  };
}
