import { useState } from 'react';
import { sameDose } from '../../dose/dose.ts';
import { steppedBack } from '../../dose/dose-change.ts';
import type { Prescription } from '../../dose/prescription.ts';
import type { TodayLine } from '../../dose/today-line.ts';
import type { DiaryEntry } from '../../record/diary-entry.ts';
import { useWords } from '../words/words-context.tsx';
import { changeWords } from './change-words.ts';
import { entryNow } from './entry-now.ts';

interface LessButtonProps {
  readonly prescription: Prescription;
  readonly line: TodayLine;
  readonly add: (entries: readonly DiaryEntry[]) => Promise<boolean>;
}

/** Steps the dose of a line back by choice, once it was said what that means; nothing where the dose is the least already. */
export function LessButton({ prescription, line, add }: LessButtonProps) {
  const { day } = useWords();
  const [asking, setAsking] = useState(false);
  const { item, dose } = line;
  const to = steppedBack(dose, item);
  if (sameDose(dose, to)) return null;
  const less = () =>
    add([
      {
        ...entryNow(prescription.origin),
        kind: 'dose-step',
        prescriptionId: prescription.id,
        itemId: item.id,
        direction: 'back',
        from: dose,
        to,
        aboutDay: null,
        reason: 'chosen',
        by: 'patient',
      },
    ]);
  if (!asking)
    return (
      <button type="button" className="button" data-look="quiet" onClick={() => setAsking(true)}>
        {day.go.less}
      </button>
    );
  return (
    <div className="go-less">
      <p>
        {day.go.lessTitle} {changeWords(dose, to, day)}
      </p>
      <div className="day-actions">
        <button
          type="button"
          className="button"
          onClick={async () => {
            if (await less()) setAsking(false);
          }}
        >
          {day.proposal.take}
        </button>
        <button type="button" className="button" onClick={() => setAsking(false)}>
          {day.proposal.keep}
        </button>
      </div>
    </div>
  );
}
