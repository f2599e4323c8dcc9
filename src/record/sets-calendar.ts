import { calendarText, escapedText, utcStamp } from '../dose/icalendar.ts';
import type { PrescribedExerciseId } from '../dose/prescribed-exercise.ts';
import type { Side } from '../pose/landmarks.ts';
import type { DiaryEntry } from './diary-entry.ts';
import { editedCount } from './rep-edit.ts';
import { setEndMs } from './set-end.ts';
import type { StoredSet } from './stored-set.ts';
import { handSetsOf, tableSets } from './table-sets.ts';

/** A set that was done, as a calendar shows it. */
export interface CalendarSet {
  readonly id: string;
  /** A therapist's own one by its name. */
  readonly exercise: PrescribedExerciseId | { readonly ownName: string };
  readonly side: Side;
  readonly reps: number;
  /** ISO 8601, UTC. `startedAt` is null of a set without the camera, of which only the end was told. */
  readonly startedAt: string | null;
  readonly endedAt: string;
}

function exerciseIn({ exercise, definition }: StoredSet): CalendarSet['exercise'] {
  if (exercise !== 'own') return exercise;
  if (!definition) throw new Error('calendarSets requires the definition of an own exercise, got none');
  return { ownName: definition.name };
}

/** The sets that somebody did themselves and that have a repetition, oldest first; invented ones stay out of a calendar. */
export function calendarSets(sets: readonly StoredSet[], diary: readonly DiaryEntry[]): readonly CalendarSet[] {
  const measured = tableSets(sets, diary, 'UTC').flatMap(({ set, origin }): CalendarSet[] => {
    const reps = editedCount(set);
    const { id, side, startedAt } = set;
    if (origin !== 'own' || reps === 0) return [];
    const endedAt = new Date(setEndMs(set)).toISOString();
    return [{ id, exercise: exerciseIn(set), side, reps, startedAt, endedAt }];
  });
  const byHand = handSetsOf(diary).flatMap(({ id, origin, exercise, side, reps, at }): CalendarSet[] =>
    origin === 'own' && reps > 0 ? [{ id, exercise, side, reps, startedAt: null, endedAt: at }] : [],
  );
  return [...measured, ...byHand].sort((a, b) => (a.endedAt < b.endedAt ? -1 : Number(a.endedAt > b.endedAt)));
}

/**
 * Done sets as events of an iCalendar file (RFC 5545), in UTC: what was done has its moment, wherever it is read. A set of which only the end is known is an
 * event without a length. Written again, an event has the same UID, so that a calendar replaces it. Nobody is invited, nothing is sent, nothing rings.
 * @param words what an event is called in the person's language
 * @param stampedAt when it was written, ISO 8601, UTC
 */
export const setsCalendar = (sets: readonly CalendarSet[], words: (set: CalendarSet) => string, stampedAt: string): string =>
  calendarText(
    'Sets',
    sets.map((set) => [
      'BEGIN:VEVENT',
      `UID:${escapedText(set.id)}@evenside.invalid`,
      `DTSTAMP:${utcStamp(stampedAt)}`,
      `DTSTART:${utcStamp(set.startedAt ?? set.endedAt)}`,
      // RFC 5545, 3.6.1: without DTEND an event ends when it begins; DTEND must be later than DTSTART.
      ...(set.startedAt !== null && utcStamp(set.startedAt) < utcStamp(set.endedAt) ? [`DTEND:${utcStamp(set.endedAt)}`] : []),
      `SUMMARY:${escapedText(words(set))}`,
      'TRANSP:TRANSPARENT',
      'CLASS:PRIVATE',
      'END:VEVENT',
    ]),
  );
