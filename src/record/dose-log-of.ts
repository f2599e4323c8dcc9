import { type DoneSet, doneByHand, type SetLink } from '../dose/done-set.ts';
import type { DoseLog } from '../dose/dose-log.ts';
import { localTime } from '../dose/local-time.ts';
import type { DiaryEntry } from './diary-entry.ts';
import { editedCount, editedReps } from './rep-edit.ts';
import { setEndMs } from './set-end.ts';
import type { StoredSet } from './stored-set.ts';

/** The diary and the measured sets sorted into what the rules ask for. */
export function doseLogOf(entries: readonly DiaryEntry[], sets: readonly StoredSet[], timeZone: string): DoseLog {
  const of = <K extends DiaryEntry['kind']>(kind: K) =>
    entries.filter((entry): entry is Extract<DiaryEntry, { readonly kind: K }> => entry.kind === kind);
  const links = new Map(of('set-link').map((link) => [link.setId, link]));
  return {
    redFlags: of('red-flags'),
    clearances: of('clearance'),
    reports: of('symptoms'),
    checkIns: of('check-in'),
    selfChecks: of('self-check'),
    prescriptions: of('prescription'),
    steps: of('dose-step'),
    angleMarks: of('angle-mark'),
    removals: of('removal'),
    done: [...of('hand-set').map(doneByHand), ...sets.flatMap((set) => measured(set, links.get(set.id), timeZone))],
  };
}

/**
 * A measured set as one that was done. Without a link only the camera's count: a file may show anybody on any day. A therapist's own exercise cannot be
 * prescribed yet.
 */
function measured(set: StoredSet, link: SetLink | undefined, timeZone: string): readonly DoneSet[] {
  const { id, exercise, side, startedAt } = set;
  if (set.state === 'running' || exercise === 'own' || (set.source !== 'camera' && !link)) return [];
  const endedAt = new Date(setEndMs(set)).toISOString();
  const rangesDeg = editedReps(set).flatMap((each) =>
    each.kind === 'measured' && !each.struck && each.rep.complete ? [each.rep.rangeDeg] : [],
  );
  const day = link?.day ?? localTime({ nowMs: Date.parse(startedAt), timeZone }).day;
  const glide = set.result?.glide ?? null;
  const seenBy = set.model === 'stickers' ? { seenBy: set.model } : {};
  return [
    { id, exercise, side, itemId: link?.itemId ?? null, day, endedAt, reps: editedCount(set), rangesDeg, ...seenBy, glide },
  ];
}
