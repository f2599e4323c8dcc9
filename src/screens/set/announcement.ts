import type { SetEvent } from '../../measure/live-view.ts';
import type { MeasuredRep } from '../../measure/set-result.ts';
import type { UnseenReason } from '../../stickers/unseen-reason.ts';
import type { Words } from '../words/words.ts';
import { hadToEnd, noteWords } from './glide-note.ts';
import type { Signal } from './signal.ts';
import type { Tone } from './tones.ts';
import type { VoiceRank } from './voice.ts';

type EndedWhy = Extract<SetEvent, { kind: 'ended' }>['why'];

/** What is heard. */
export interface Announcement {
  readonly say: string | null;
  readonly tone: Tone | null;
  /** Left out: as much as a count. */
  readonly rank?: VoiceRank;
}

/** What an event is told about. */
export interface Heard {
  /** Complete repetitions, this event's included. */
  readonly counted: number;
  /** The dose; null when there is none. */
  readonly target: number | null;
  /** What a raised hand or the space bar does from now on. */
  readonly signal: Signal;
  /** Whether a hand is looked for. */
  readonly camera: boolean;
  /** Whether there is a keyboard to press. */
  readonly keys: boolean;
  /** Whether stickers are followed, and not a body. */
  readonly stickers: boolean;
  /** Why not all of them are measured now; null: not known. */
  readonly unseen: UnseenReason | null;
}

/** What an event sounds like. */
export function announcementOf(event: SetEvent, heard: Heard, words: Words['set']): Announcement {
  switch (event.kind) {
    case 'ready':
      return { say: `${words.readyVoice} ${words.signalVoice[heard.signal](heard.camera, heard.keys)}`, tone: 'ready' };
    case 'rep':
      return repAnnouncement(event.rep, heard, words);
    case 'lost':
      return { say: heard.stickers ? words.unseen[heard.unseen ?? 'lost'] : words.lostVoice, tone: 'lost' };
    case 'found':
      return { say: heard.stickers ? words.stickers.foundVoice : words.foundVoice, tone: null };
    case 'hand':
      // What it does is said by who does it: see `run.ts`.
      return { say: null, tone: null };
    case 'glide':
      // The count says that it counted; what it was is said only when it needs saying.
      return { say: null, tone: null };
    case 'glide-wrong':
      return { say: noteWords({ what: 'wrong' }, words), tone: null, rank: 'wrong' };
    case 'glide-trouble':
      return { say: noteWords(event, words), tone: null, rank: 'wrong' };
    case 'ended':
      return { say: endedVoice(event.why, heard, words), tone: 'ended', rank: 'end' };
    default:
      return event satisfies never;
  }
}

/** How many there were; of a set that had to end early, why, and what to do. */
const endedVoice = (why: EndedWhy, { counted }: Pick<Heard, 'counted'>, words: Words['set']): string =>
  hadToEnd(why) ? words.finishing[why] : words.endedVoice(counted);

/** The count, and after it, whatever the count was: that it went past where symptoms begin. Once for each such repetition, and calmly. */
function repAnnouncement({ complete, flags }: MeasuredRep, { counted, target }: Heard, words: Words['set']): Announcement {
  const full = counted === target ? words.doseDone(target) : String(counted);
  const count = complete ? full : words.smallVoice;
  const say = flags.includes('past-onset') ? `${count}${/[.!?]$/.test(count) ? '' : '.'} ${words.pastOnset}` : count;
  return { say, tone: complete ? 'complete' : 'partial' };
}
