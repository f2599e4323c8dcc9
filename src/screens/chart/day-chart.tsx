import { Bar, Line, LinePath } from '@visx/shape';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { DayAxes } from './day-axes.tsx';
import './day-chart.css';
import { ErrorBar, Mark, type MarkKind } from './mark.tsx';

/** A value of a day, with the half width of its error band where it has one. */
export interface DayValue {
  readonly day: CalendarDay;
  readonly value: number;
  /** 0: none. */
  readonly band: number;
  /** A filled circle when left out. */
  readonly mark?: MarkKind;
}

/** A value drawn across all days, with its name. */
export interface DayReference {
  readonly name: string;
  readonly value: number;
}

interface DayChartProps {
  /** All days looked at, oldest first, with and without a value. */
  readonly days: readonly CalendarDay[];
  /** In order of time; several of one day share its room. */
  readonly values: readonly DayValue[];
  /** Where the values should lie; null: nowhere in particular. */
  readonly target: { readonly from: number; readonly to: number } | null;
  readonly reference: DayReference | null;
  /** The least and the most that the scale shows whatever the values. */
  readonly scale: { readonly from: number; readonly to: number };
  readonly unit: string;
  readonly label: string;
  /** px. */
  readonly height?: number;
}

const HEIGHT = 200;
/** Room for a name over the topmost line, px. */
const TOP_NAMED = 24;
/** A mark's radius, px; smaller where values lie close, by this share of the room of one. Chosen. */
const DOT = { most: 6, least: 2.5, share: 0.25 } as const;
/** A name stands over its line, or under it where the values are over it, px. */
const NAME_OVER = -6;
const NAME_UNDER = 17;

/** The most values that any day has. */
const mostOfADay = (values: readonly DayValue[]): number => {
  const counts = new Map<CalendarDay, number>();
  for (const { day } of values) counts.set(day, (counts.get(day) ?? 0) + 1);
  return Math.max(1, ...counts.values());
};

/** Each value with its place in its day. */
function placed(values: readonly DayValue[]): readonly (DayValue & { readonly share: number; readonly key: string })[] {
  return values.map((each) => {
    const ofDay = values.filter(({ day }) => day === each.day);
    const i = ofDay.indexOf(each);
    return { ...each, share: (i + 0.5) / ofDay.length, key: `${each.day} ${i}` };
  });
}

/** Values over days: marks with their error bands, joined in order of time; target and reference behind them. */
export function DayChart({ days, values, target, reference, scale, unit, label, height = HEIGHT }: DayChartProps) {
  const ends = values.flatMap(({ value, band }) => [value - band, value + band]);
  const others = [...(target ? [target.from, target.to] : []), ...(reference ? [reference.value] : [])];
  const all = [scale.from, scale.to, ...ends, ...others];
  const under = reference !== null && values.every(({ value }) => value > reference.value);
  const axis = { from: Math.min(...all), to: Math.max(...all), write: (value: number) => `${value}${unit}` };
  const most = mostOfADay(values);
  const points = placed(values);
  return (
    <DayAxes days={days} values={axis} label={label} height={height} {...(reference && !under ? { top: TOP_NAMED } : {})}>
      {({ left, right, room, x, y }) => {
        const size = Math.max(DOT.least, Math.min(DOT.most, (DOT.share * room) / most));
        return (
          <>
            {target ? (
              <Bar
                className="day-chart-target"
                x={left}
                width={right - left}
                y={y(target.to)}
                height={y(target.from) - y(target.to)}
              />
            ) : null}
            {reference ? (
              <>
                <Line
                  className="day-chart-reference"
                  from={{ x: left, y: y(reference.value) }}
                  to={{ x: right, y: y(reference.value) }}
                />
                <text
                  className="day-chart-name"
                  x={right}
                  y={y(reference.value) + (under ? NAME_UNDER : NAME_OVER)}
                  textAnchor="end"
                >
                  {reference.name}
                </text>
              </>
            ) : null}
            <LinePath
              className="day-chart-line"
              data={[...points]}
              x={({ day, share }) => x(day, share)}
              y={({ value }) => y(value)}
            />
            {points.map(({ key, day, share, value, band, mark }) => (
              <g key={key}>
                {band > 0 ? <ErrorBar x={x(day, share)} from={y(value - band)} to={y(value + band)} size={size} /> : null}
                <Mark kind={mark ?? 'dot'} x={x(day, share)} y={y(value)} size={size} />
              </g>
            ))}
          </>
        );
      }}
    </DayAxes>
  );
}
