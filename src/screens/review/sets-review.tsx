import { useWindowVirtualizer } from '@tanstack/react-virtual';
import { useMemo, useState } from 'react';
import { DayProblem } from '../day/day-problem.tsx';
import { timeZoneHere } from '../parts/clock-now.ts';
import { useStoredSets } from '../start/use-stored-sets.ts';
import '../start/stored-sets.css';
import { useWords } from '../words/words-context.tsx';
import { RemovedSets } from './removed-sets.tsx';
import { SetRowLine } from './set-row-line.tsx';
import { type SetRow, setRows } from './set-rows.ts';
import { usePrinting } from './use-printing.ts';
import type { Reviewed } from './use-review.ts';

/** With more sets than this only those in sight are drawn. Chosen. */
const MOST_DRAWN = 40;
/** About a row's height, px, until it is measured; and so many more are drawn on each side. */
const ROW_PX = 76;
const OVERSCAN = 8;

function Whole({ rows }: { readonly rows: readonly SetRow[] }) {
  return (
    <ul className="set-lines">
      {rows.map((row) => (
        <li key={row.id}>
          <SetRowLine row={row} />
        </li>
      ))}
    </ul>
  );
}

/** A long list that scrolls with the page. */
function InSight({ rows }: { readonly rows: readonly SetRow[] }) {
  const [box, setBox] = useState<HTMLUListElement | null>(null);
  const scrollMargin = box ? box.getBoundingClientRect().top + window.scrollY : 0;
  const list = useWindowVirtualizer({
    count: rows.length,
    estimateSize: () => ROW_PX,
    getItemKey: (i) => rows[i]?.id ?? i,
    overscan: OVERSCAN,
    scrollMargin,
  });
  const drawn = list.getVirtualItems();
  const before = (drawn[0]?.start ?? scrollMargin) - scrollMargin;
  const after = list.getTotalSize() + scrollMargin - (drawn.at(-1)?.end ?? scrollMargin);
  return (
    <ul ref={setBox} className="set-lines review-sets" style={{ paddingTop: before, paddingBottom: after }}>
      {drawn.map(({ index, key }) => {
        const row = rows[index];
        return row ? (
          <li key={key} ref={list.measureElement} data-index={index} aria-setsize={rows.length} aria-posinset={index + 1}>
            <SetRowLine row={row} />
          </li>
        ) : null;
      })}
    </ul>
  );
}

/** Every set of these days, each down to its own page. */
export function SetsReview({ reviewed: { log, from, to } }: { readonly reviewed: Reviewed }) {
  const { review, app, start } = useWords();
  const stored = useStoredSets();
  const printing = usePrinting();
  const sets = stored?.ok ? stored.value.sets : null;
  const rows = useMemo(() => (sets ? setRows(log, sets, from, to, timeZoneHere()) : []), [log, sets, from, to]);
  const List = rows.length > MOST_DRAWN && !printing ? InSight : Whole;
  return (
    <section>
      <h2>{review.sets.title}</h2>
      {stored === null ? <p className="heard">{app.loading}</p> : null}
      <DayProblem problem={stored && !stored.ok ? stored.error : null} />
      {sets && rows.length === 0 ? <p>{review.sets.none}</p> : null}
      {rows.length > 0 ? <p className="soft small">{review.sets.error}</p> : null}
      {rows.length > 0 ? <List rows={rows} /> : null}
      <RemovedSets log={log} from={from} to={to} />
      {stored?.ok && stored.value.damaged > 0 ? <p className="soft">{start.damaged(stored.value.damaged)}</p> : null}
    </section>
  );
}
