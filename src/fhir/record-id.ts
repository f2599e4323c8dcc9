import type { Observation, Reference, ServiceRequest } from '@medplum/fhirtypes';
import type { Prescription } from '../dose/prescription.ts';
import { byMoment } from '../symptoms/entry.ts';
import { identifier, type Naming } from './naming.ts';
import { type Context, type Known, refTo } from './prepared.ts';

/** The identifier of a record: a set, an edit, an entry of the diary. */
export const recordId = (naming: Naming, id: string): Known => identifier(naming, 'record', id);
/** A line keeps its id from one prescription to the next, so the prescription is part of it. */
export const lineId = (naming: Naming, prescriptionId: string, itemId: string): Known =>
  identifier(naming, 'line', `${prescriptionId}/${itemId}`);

export const setRef = ({ naming }: Context, setId: string): Reference<Observation> =>
  refTo<Observation>('Observation', recordId(naming, setId));
export const lineRef = ({ naming }: Context, prescriptionId: string, itemId: string): Reference<ServiceRequest> =>
  refTo<ServiceRequest>('ServiceRequest', lineId(naming, prescriptionId, itemId));

/** The line as it held at a moment: of the newest prescription until then that has it. None when nobody said, or it is in none. */
export function lineHeldAt(context: Context, itemId: string | null, at: string): readonly Reference<ServiceRequest>[] {
  const held = context.diary
    .filter((entry): entry is Prescription => entry.kind === 'prescription')
    .filter((entry) => entry.at <= at && entry.items.some(({ id }) => id === itemId))
    .toSorted(byMoment)
    .at(-1);
  return held && itemId !== null ? [lineRef(context, held.id, itemId)] : [];
}
