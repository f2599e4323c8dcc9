import { useState } from 'react';
import { useLocation } from 'wouter';
import { DayProblem } from '../day/day-problem.tsx';
import { entryNow } from '../day/entry-now.ts';
import { useDay } from '../day/use-day.ts';
import { Page } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import { FeelForm } from './feel-form.tsx';
import { answered, UNSAID } from './feeling.ts';

/** What is felt before a set; then on to the set. */
export function BeforeScreen({ itemId, side }: { readonly itemId: string; readonly side: string }) {
  const { feel } = useWords();
  const { problem, add } = useDay();
  const [, navigate] = useLocation();
  const [felt, setFelt] = useState(UNSAID);
  const goOn = async () => {
    const kept = await add([{ ...entryNow(), kind: 'symptoms', moment: 'before-set', setId: null, itemId, ...answered(felt) }]);
    if (kept) navigate(`/today/ask/${itemId}/${side}`);
  };
  return (
    <Page className="feel" title={feel.before} lead={feel.lead} back="/today">
      <div className="feel-parts">
        <DayProblem problem={problem} />
        <FeelForm felt={felt} onChange={setFelt} />
        <button type="button" className="button" data-look="main" onClick={() => void goOn()}>
          {feel.goOn}
        </button>
      </div>
    </Page>
  );
}
