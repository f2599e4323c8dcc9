import { AxisBottom, AxisLeft } from '@visx/axis';
import { scaleBand, scaleLinear } from '@visx/scale';
import { Line } from '@visx/shape';
import type { ReactNode } from 'react';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { shortDayIn } from '../day/clock-words.ts';
import { useWords } from '../words/words-context.tsx';
import { belowTick, besideTick } from './axis-tick.tsx';
import { useChartWidth } from './chart-width.ts';
import './day-axes.css';

/** How the values are written at the left. */
export interface ValueAxis {
  /** At the bottom and at the top; `from` may be the larger one. */
  readonly from: number;
  readonly to: number;
  readonly write: (value: number) => string;
  /** Where it is written; left out: at a few round values. */
  readonly ticks?: readonly number[];
}

/** Where days and values lie, px. */
export interface DayArea {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** The room of one day. */
  readonly room: number;
  /** A moment of a day. @param share of the day, 0 to 1 */
  readonly x: (day: CalendarDay, share?: number) => number;
  readonly y: (value: number) => number;
}

interface DayAxesProps {
  /** All days looked at, oldest first; of weeks, their first days. */
  readonly days: readonly CalendarDay[];
  /** Null: nothing is read off at the left. */
  readonly values: ValueAxis | null;
  /** What the drawing says, for those who do not see it; a table has every value. */
  readonly label: string;
  /** px. */
  readonly height: number;
  /** Room above the values and at their left, px. */
  readonly top?: number;
  readonly gutter?: number;
  readonly children: (area: DayArea) => ReactNode;
}

const MARGIN = { top: 12, right: 16, bottom: 30 } as const;
const GUTTER = 48;
const TICKS = 5;
/** Height that a value at the left needs, so that two never touch, px. */
const PX_PER_VALUE = 26;
const PX_PER_DATE = 64;
/** With less room for a day its marks are drawn thin, px. Chosen. */
const DENSE_PX = 10;

/** Values over days: dates below, values at the left, faint lines across. What is drawn among them is the caller's. */
export function DayAxes({ days, values, label, height, top = MARGIN.top, gutter = GUTTER, children }: DayAxesProps) {
  const { locale } = useWords();
  const { parentRef, width } = useChartWidth();
  const [left, right, bottom] = [gutter, Math.max(gutter + 1, width - MARGIN.right), height - MARGIN.bottom];
  const across = scaleBand<CalendarDay>({ domain: [...days], range: [left, right] });
  const room = across.bandwidth();
  const up = scaleLinear<number>({ domain: [values?.from ?? 0, values?.to ?? 1], range: [bottom, top] });
  const ticks = values
    ? [...(values.ticks ?? up.ticks(Math.max(1, Math.min(TICKS, Math.floor((bottom - top) / PX_PER_VALUE)))))]
    : [];
  const dated = days.filter((_, i) => i % Math.max(1, Math.ceil(PX_PER_DATE / room)) === 0);
  const x = (day: CalendarDay, share = 0.5) => (across(day) ?? left) + share * room;
  return (
    <div ref={parentRef} className="day-chart">
      <svg
        data-dense={room < DENSE_PX}
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        role="img"
        aria-label={label}
      >
        {ticks.map((tick) => (
          <Line key={tick} className="axis-grid" from={{ x: left, y: up(tick) }} to={{ x: right, y: up(tick) }} />
        ))}
        {children({ left, right, top, bottom, room, x, y: (value) => up(value) })}
        {values ? (
          <AxisLeft
            scale={up}
            left={left}
            tickValues={ticks}
            tickFormat={(value) => values.write(Number(value))}
            tickComponent={besideTick}
            tickLength={4}
            hideAxisLine
            hideTicks
          />
        ) : null}
        <AxisBottom
          scale={across}
          top={bottom}
          tickValues={dated}
          tickFormat={(day) => shortDayIn(locale, day)}
          tickComponent={belowTick}
          tickLength={4}
          hideAxisLine
          hideTicks
        />
      </svg>
    </div>
  );
}
