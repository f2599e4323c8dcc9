import type { GivenPlan } from '../../dose/given-plan.ts';
import { useWords } from '../words/words-context.tsx';
import { PlanLines } from './plan-lines.tsx';
import { charactersOf, originSays, saidOfAll } from './plan-says.ts';
import './plan-sheet.css';
import { QrCode } from './qr-code.tsx';

interface PlanSheetProps {
  readonly plan: GivenPlan;
  /** Null: none that another machine could open. */
  readonly link: string | null;
}

/**
 * Characters of all exercises up to which the page holds large print, or smaller print; beyond, the smallest. Chosen: tried on A4 and Letter with the widest
 * usual font and a QR code; tests/browser/plan-sheet.test.ts.
 */
const ROOM = { large: 1100, smaller: 2400 } as const;

function printOf(characters: number): 'large' | 'smaller' | 'smallest' {
  if (characters <= ROOM.large) return 'large';
  return characters <= ROOM.smaller ? 'smaller' : 'smallest';
}

/** The plan on one page of paper: what, how much, how far, what to heed, when to stop and when to call. Never on the screen. */
export function PlanSheet({ plan, link }: PlanSheetProps) {
  const words = useWords();
  const { start, safety, handOver, prescribe } = words;
  const { sheet, says, give } = handOver;
  const once = saidOfAll(plan.items, words);
  const print = printOf(charactersOf(plan.items, words, once));
  return (
    <div className="plan-sheet" data-print={print} aria-hidden="true">
      <header>
        <h1>{sheet.title}</h1>
        <p>
          {originSays(plan, words)}
          {plan.origin === 'example' ? <strong>{` ${says.invented}`}</strong> : null}
        </p>
      </header>
      <PlanLines items={plan.items} once={once} />
      {once.length > 0 ? (
        <p className="plan-sheet-all">
          <strong>{prescribe.ofAll}</strong> {once.join(' ')}
        </p>
      ) : null}
      <div className="plan-sheet-safety">
        <section>
          <h2>{sheet.stop}</h2>
          <ul>
            {[...start.caution.slice(0, 1), sheet.weaker].map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
          <h2>{safety.alsoTitle}</h2>
          <ul>
            {safety.also.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </section>
        <section>
          <h2>{safety.title}</h2>
          <p>{safety.lead}</p>
          <ul>
            {safety.signs.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
          <p>
            <strong>{safety.todo}</strong>
          </p>
        </section>
        {link === null ? null : (
          <figure>
            <QrCode text={link} label={give.qrLabel} />
            <figcaption>{sheet.scan}</figcaption>
          </figure>
        )}
      </div>
      <footer>{`${sheet.foot} ${safety.limits}`}</footer>
    </div>
  );
}
