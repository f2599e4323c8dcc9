import { useState } from 'react';
import { Redirect, useLocation } from 'wouter';
import type { CheckIn } from '../../symptoms/check-in.ts';
import { dayIn } from '../day/clock-words.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { entryNow } from '../day/entry-now.ts';
import { useDay } from '../day/use-day.ts';
import { Page } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import { FeelForm } from './feel-form.tsx';
import { answered, UNSAID } from './feeling.ts';
import { OneOf } from './one-of.tsx';
import { StrengthScale } from './strength-scale.tsx';

type Looked = Pick<CheckIn, 'worst' | 'afterwards' | 'weakness'>;

/** The next day: how it was after the sets, and how it is now. */
export function CheckInScreen() {
  const { feel, app, locale } = useWords();
  const { log, today, problem, add } = useDay();
  const [, navigate] = useLocation();
  const [felt, setFelt] = useState(UNSAID);
  const [looked, setLooked] = useState<Looked>({ worst: 'not-answered', afterwards: 'not-answered', weakness: 'not-answered' });
  const about = today?.checkInAbout ?? null;
  const words = feel.checkIn;
  if (!log && !problem) return <p className="heard">{app.loading}</p>;
  // Answered already, or nothing was done that could be looked back on.
  if (about === null && !problem) return <Redirect to="/today" replace />;
  const keep = async () => {
    if (about === null) return navigate('/today');
    const kept = await add([{ ...entryNow(), kind: 'check-in', aboutDay: about, ...looked, ...answered(felt) }]);
    if (kept) navigate('/today');
  };
  return (
    <Page className="feel" title={words.title(about === null ? '' : dayIn(locale, about))} lead={feel.lead} back="/today">
      <div className="feel-parts">
        <DayProblem problem={problem} />
        <StrengthScale
          name="worst"
          legend={words.worst}
          value={looked.worst}
          onChange={(worst) => setLooked({ ...looked, worst })}
        />
        <OneOf
          name="afterwards"
          legend={words.afterwards}
          options={(['no-flare', 'settled', 'not-settled'] as const).map((value) => ({ value, name: words.how[value] }))}
          chosen={looked.afterwards}
          onChoose={(afterwards) => setLooked({ ...looked, afterwards })}
        />
        <OneOf
          name="weakness"
          legend={words.weakness}
          options={(['as-before', 'worse'] as const).map((value) => ({ value, name: words.strength[value] }))}
          chosen={looked.weakness}
          onChoose={(weakness) => setLooked({ ...looked, weakness })}
        />
        <h2 className="feel-now">{words.now}</h2>
        <FeelForm felt={felt} onChange={setFelt} />
        <button type="button" className="button" data-look="main" onClick={() => void keep()}>
          {words.keep}
        </button>
      </div>
    </Page>
  );
}
