import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { shortDayIn } from '../day/clock-words.ts';
import { scaleOf } from '../result/scale.ts';
import { useWidth } from '../result/use-width.ts';
import { useWords } from '../words/words-context.tsx';
import './day-chart.css';

/** A day's value, with the half width of its error band where it has one. */
export interface DayValue {
  readonly day: CalendarDay;
  readonly value: number;
  readonly band: number;
}

/** A value drawn across all days, with its name. */
export interface DayReference {
  readonly name: string;
  readonly value: number;
}

interface DayChartProps {
  /** All days looked at, oldest first, with and without a value. */
  readonly days: readonly CalendarDay[];
  readonly values: readonly DayValue[];
  /** Where the values should lie; null: nowhere in particular. */
  readonly target: { readonly from: number; readonly to: number } | null;
  readonly reference: DayReference | null;
  /** The least and the most that the scale shows whatever the values. */
  readonly scale: { readonly from: number; readonly to: number };
  readonly unit: string;
  /** What the drawing says, for those who do not see it; the table has every value. */
  readonly label: string;
  /** px. */
  readonly height?: number;
}

const HEIGHT = 200;
/** A dot's radius, px; smaller where days lie close, by this share of the room of a day. Chosen. */
const DOT = { most: 6, least: 2.5, share: 0.25 } as const;
const MARGIN = { top: 12, topNamed: 24, right: 16, bottom: 30, left: 48 } as const;
/** With less room for a day its error is drawn thin, px. Chosen. */
const DENSE_PX = 10;
/** A name stands over its line, or under it where the values are over it, px. */
const NAME_OVER = -6;
const NAME_UNDER = 17;
const PX_PER_DATE = 64;
const TICKS = 5;

/** One value a day over days: a dot with its error band, joined where days follow one another; target and reference behind it. */
export function DayChart({ days, values, target, reference, scale, unit, label, height = HEIGHT }: DayChartProps) {
  const { locale } = useWords();
  const { ref, width } = useWidth<HTMLDivElement>(900);
  const ends = values.flatMap(({ value, band }) => [value - band, value + band]);
  const all = [
    scale.from,
    scale.to,
    ...ends,
    ...(target ? [target.from, target.to] : []),
    ...(reference ? [reference.value] : []),
  ];
  const bottom = height - MARGIN.bottom;
  const under = reference !== null && values.every(({ value }) => value > reference.value);
  const top = reference && !under ? MARGIN.topNamed : MARGIN.top;
  const y = scaleOf(Math.min(...all), Math.max(...all), bottom, top, TICKS);
  const right = width - MARGIN.right;
  const room = (right - MARGIN.left) / Math.max(1, days.length);
  const dot = Math.max(DOT.least, Math.min(DOT.most, DOT.share * room));
  const xOf = (day: CalendarDay) => MARGIN.left + (days.indexOf(day) + 0.5) * room;
  const dated = days.filter((_, i) => i % Math.max(1, Math.ceil(PX_PER_DATE / room)) === 0);
  return (
    <div ref={ref} className="day-chart">
      <svg
        data-dense={room < DENSE_PX}
        viewBox={`0 0 ${width} ${height}`}
        width={width}
        height={height}
        role="img"
        aria-label={label}
      >
        {target ? (
          <rect
            className="day-chart-target"
            x={MARGIN.left}
            width={right - MARGIN.left}
            y={y.at(target.to)}
            height={y.at(target.from) - y.at(target.to)}
          />
        ) : null}
        {y.ticks.map((tick) => (
          <g key={tick}>
            <path className="day-chart-grid" d={`M${MARGIN.left} ${y.at(tick)}H${right}`} />
            <text className="day-chart-tick" x={MARGIN.left - 8} y={y.at(tick) + 5} textAnchor="end">
              {tick}
              {unit}
            </text>
          </g>
        ))}
        {dated.map((day) => (
          <text key={day} className="day-chart-tick" x={xOf(day)} y={bottom + 22} textAnchor="middle">
            {shortDayIn(locale, day)}
          </text>
        ))}
        {reference ? (
          <>
            <path className="day-chart-reference" d={`M${MARGIN.left} ${y.at(reference.value)}H${right}`} />
            <text
              className="day-chart-name"
              x={right}
              y={y.at(reference.value) + (under ? NAME_UNDER : NAME_OVER)}
              textAnchor="end"
            >
              {reference.name}
            </text>
          </>
        ) : null}
        <polyline className="day-chart-line" points={values.map(({ day, value }) => `${xOf(day)},${y.at(value)}`).join(' ')} />
        {values.map(({ day, value, band }) => (
          <g key={day}>
            {band > 0 ? (
              <path
                className="day-chart-band"
                d={`M${xOf(day)} ${y.at(value - band)}V${y.at(value + band)}M${xOf(day) - dot} ${y.at(value - band)}h${2 * dot}M${xOf(day) - dot} ${y.at(value + band)}h${2 * dot}`}
              />
            ) : null}
            <circle cx={xOf(day)} cy={y.at(value)} r={dot} />
          </g>
        ))}
      </svg>
    </div>
  );
}
