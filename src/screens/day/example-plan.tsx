import type { Prescription } from '../../dose/prescription.ts';
import { startingDose } from '../../dose/starting-doses.ts';
import type { DiaryEntry } from '../../record/diary-entry.ts';
import { newId } from '../../record/new-id.ts';
import { useWords } from '../words/words-context.tsx';
import { entryNow } from './entry-now.ts';

/** An invented prescription of an invented therapist. */
const examplePrescription = (): Prescription => ({
  ...entryNow('example'),
  kind: 'prescription',
  by: { role: 'therapist', name: 'Wilma Beispiel (invented)' },
  revises: null,
  items: [
    startingDose('foot-tap', newId(), ['left']),
    startingDose('leg-raise', newId(), ['left']),
    startingDose('nerve-glide', newId(), ['left']),
    startingDose('heel-stand', newId(), ['left', 'right']),
  ],
  selfChecks: { checks: ['big-toe', 'heel-walk'], sides: ['left', 'right'], everyDays: 7 },
});

/** Puts an invented plan in, to look around with. */
export function ExamplePlan({ add }: { readonly add: (entries: readonly DiaryEntry[]) => Promise<boolean> }) {
  const { day } = useWords();
  return (
    <button type="button" className="button" onClick={() => void add([examplePrescription()])}>
      {day.examplePlan}
    </button>
  );
}
