import { useWindowVirtualizer } from '@tanstack/react-virtual';
import { useLayoutEffect, useRef, useState } from 'react';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import type { PersonLine } from './people-lines.ts';
import { PersonRow } from './person-row.tsx';

/** A line's height until it is measured, px. */
const LIKELY_PX = 92;
/** Lines drawn beyond the window's edges, so that Tab finds the next one. Chosen. */
const BEYOND = 6;

/** The lines that are in sight, and some more; the page scrolls as if all were there. */
export function PeopleList({ lines, today }: { readonly lines: readonly PersonLine[]; readonly today: CalendarDay }) {
  const list = useRef<HTMLUListElement>(null);
  const [topPx, setTopPx] = useState(0);
  useLayoutEffect(() => {
    setTopPx((list.current?.getBoundingClientRect().top ?? 0) + window.scrollY);
  }, []);
  const rows = useWindowVirtualizer({
    count: lines.length,
    estimateSize: () => LIKELY_PX,
    overscan: BEYOND,
    scrollMargin: topPx,
    getItemKey: (i) => lines[i]?.person.id ?? i,
  });
  return (
    <ul className="people-list" ref={list} style={{ height: rows.getTotalSize() }}>
      {rows.getVirtualItems().map(({ index, key, start }) => {
        const line = lines[index];
        return line ? (
          <li
            key={key}
            ref={rows.measureElement}
            data-index={index}
            aria-setsize={lines.length}
            aria-posinset={index + 1}
            style={{ transform: `translateY(${start - topPx}px)` }}
          >
            <PersonRow line={line} today={today} />
          </li>
        ) : null;
      })}
    </ul>
  );
}
