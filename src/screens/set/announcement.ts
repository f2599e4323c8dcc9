import type { SetEvent } from '../../measure/live-view.ts';
import type { Words } from '../words/words.ts';
import type { Tone } from './tones.ts';

/** What is heard. */
export interface Announcement {
  readonly say: string | null;
  readonly tone: Tone | null;
}

/**
 * What an event sounds like.
 * @param counted complete repetitions, this event's included
 * @param target the dose; null when there is none
 */
export function announcementOf(event: SetEvent, counted: number, target: number | null, words: Words['set']): Announcement {
  switch (event.kind) {
    case 'ready':
      return { say: words.readyVoice, tone: 'ready' };
    case 'rep':
      if (!event.rep.complete) return { say: words.smallVoice, tone: 'partial' };
      if (counted === target) return { say: words.doseDone(target), tone: 'complete' };
      // Past where symptoms began: said once for each such repetition, and calmly.
      return { say: event.rep.flags.includes('past-onset') ? words.pastOnsetVoice(counted) : String(counted), tone: 'complete' };
    case 'lost':
      return { say: words.lostVoice, tone: 'lost' };
    case 'found':
      return { say: words.foundVoice, tone: null };
    case 'hand':
      // What it does is said by who does it: see `run.ts`.
      return { say: null, tone: null };
    case 'ended':
      return { say: words.endedVoice(counted), tone: 'ended' };
    default:
      return event satisfies never;
  }
}
