import { useState } from 'react';
import { Link } from 'wouter';
import { byMoment } from '../../symptoms/entry.ts';
import type { Felt } from '../../symptoms/felt.ts';
import { symptomShift } from '../../symptoms/symptom-shift.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { entryNow } from '../day/entry-now.ts';
import { useDay } from '../day/use-day.ts';
import { Page } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import { FeelForm } from './feel-form.tsx';
import { answered, UNSAID } from './feeling.ts';

/** What is felt after a set, and whether it moved since before it. */
export function AfterScreen({ setId }: { readonly setId: string }) {
  const { feel } = useWords();
  const { log, problem, add } = useDay();
  const [felt, setFelt] = useState(UNSAID);
  const [told, setTold] = useState<Felt | null>(null);
  const itemId = log?.done.find(({ id }) => id === setId)?.itemId ?? null;
  const before = log?.reports
    .filter((r) => r.moment === 'before-set' && (itemId === null || r.itemId === itemId))
    .toSorted(byMoment)
    .at(-1);
  const keep = async () => {
    const given = answered(felt);
    const kept = await add([{ ...entryNow(), kind: 'symptoms', moment: 'after-set', setId, itemId, ...given }]);
    if (kept) setTold(given);
  };
  if (told)
    return (
      <Page className="feel" title={feel.shiftTitle} back="/today">
        <div className="feel-parts">
          <p className="feel-shift">{feel.shift[before ? symptomShift(before, told).kind : 'unknown']}</p>
          <Link href="/today" className="button" data-look="main">
            {feel.toToday}
          </Link>
        </div>
      </Page>
    );
  return (
    <Page className="feel" title={feel.after} lead={feel.lead} back="/today">
      <div className="feel-parts">
        <DayProblem problem={problem} />
        <FeelForm felt={felt} onChange={setFelt} />
        <button type="button" className="button" data-look="main" disabled={!log && !problem} onClick={() => void keep()}>
          {feel.keep}
        </button>
      </div>
    </Page>
  );
}
