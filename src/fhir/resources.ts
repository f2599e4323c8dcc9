import type { Reference } from '@medplum/fhirtypes';
import type { DiaryEntry } from '../record/diary-entry.ts';
import type { StoredSet } from '../record/stored-set.ts';
import { linksBySet, originOf } from '../record/table-sets.ts';
import { angleMarkObservation } from './angle-mark-observation.ts';
import { carePlanOf } from './care-plan.ts';
import { deviceOf } from './device.ts';
import { handSetObservation } from './hand-set-observation.ts';
import { type Context, type Prepared, refTo } from './prepared.ts';
import { recordDocument } from './record-document.ts';
import { idOfRecord, recordsOfSet, type TravellingRecord } from './record-envelope.ts';
import { setRef } from './record-id.ts';
import { removedObservation } from './removed-observation.ts';
import { doseStepRequest } from './service-requests.ts';
import { setObservations } from './set-observation.ts';
import { patientOf } from './subject.ts';
import { checkInResponse, clearanceResponse, redFlagsResponse, selfCheckResponse, symptomResponse } from './told-responses.ts';
import { holdsTypedText } from './typed-text.ts';
import { withText } from './with-text.ts';

/** The resources that show an entry, the one for the whole entry first. A link has none of its own: the set that it is about names the line. */
function shownBy(context: Context, entry: DiaryEntry): readonly Prepared[] {
  switch (entry.kind) {
    case 'prescription':
      return carePlanOf(context, entry);
    case 'dose-step':
      return [doseStepRequest(context, entry)];
    case 'hand-set':
      return [handSetObservation(context, entry)];
    case 'set-link':
      return [];
    case 'symptoms':
      return [symptomResponse(context, entry)];
    case 'check-in':
      return [checkInResponse(context, entry)];
    case 'red-flags':
      return [redFlagsResponse(context, entry)];
    case 'clearance':
      return [clearanceResponse(context, entry)];
    case 'self-check':
      return [selfCheckResponse(context, entry)];
    case 'angle-mark':
      return [angleMarkObservation(context, entry)];
    case 'removal':
      return removedObservation(context, entry);
    default:
      return entry satisfies never;
  }
}

/** What did not go out whole, and why. `running`: a set that is not over. `typed-text`: it is shown, but its record was left out for what was typed in it. */
export interface LeftOut {
  readonly id: string;
  readonly why: 'running' | 'typed-text';
}

export interface Resources {
  readonly prepared: readonly Prepared[];
  readonly leftOut: readonly LeftOut[];
}

/** All resources of these sets and entries: person, program, what shows each record, and each record whole. */
export function resourcesOf(context: Context, sets: readonly StoredSet[], entries: readonly DiaryEntry[]): Resources {
  const links = linksBySet(context.diary);
  const prepared: Prepared[] = [...patientOf(context), deviceOf(context)];
  const leftOut: LeftOut[] = [];
  const whole = (record: TravellingRecord, shown: Reference | null, origin: DiaryEntry['origin']): void => {
    if (context.texts || !holdsTypedText(record)) prepared.push(recordDocument(context, record, shown, origin));
    else leftOut.push({ id: idOfRecord(record), why: 'typed-text' });
  };
  for (const set of sets) {
    if (set.state === 'running') {
      leftOut.push({ id: set.id, why: 'running' });
      continue;
    }
    const link = links.get(set.id) ?? null;
    prepared.push(...setObservations(context, set, link));
    for (const record of recordsOfSet(set)) whole(record, setRef(context, set.id), originOf(set, link));
  }
  for (const entry of entries) {
    const shown = shownBy(context, entry);
    prepared.push(...shown);
    const [first] = shown;
    const about = entry.kind === 'set-link' ? setRef(context, entry.setId) : null;
    whole({ kind: 'entry', entry }, first ? refTo(first.resource.resourceType, first.identifier) : about, entry.origin);
  }
  return { prepared: prepared.map(withText), leftOut };
}
