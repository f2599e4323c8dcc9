import type { TravellingRecord } from './record-envelope.ts';

/** Whether a record holds something that somebody typed, which may say who they are. */
export function holdsTypedText(record: TravellingRecord): boolean {
  switch (record.kind) {
    case 'set':
      return record.set.fileName !== undefined || record.set.definition !== undefined;
    case 'edit':
      return (record.edit.note ?? '') !== '';
    case 'entry': {
      const { entry } = record;
      if (entry.kind === 'prescription') return entry.by.name !== '';
      return entry.kind === 'clearance' && entry.note !== '';
    }
    default:
      return record satisfies never;
  }
}
