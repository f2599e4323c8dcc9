import { Group } from '@visx/group';
import { LinePath } from '@visx/shape';
import type { Side } from '../../pose/landmarks.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { distanceOf, mostDistant } from '../../symptoms/place.ts';
import type { DaySymptoms } from '../../symptoms/symptoms-by-day.ts';
import { DayAxes } from './day-axes.tsx';
import { Mark, type MarkKind } from './mark.tsx';
import './place-chart.css';

interface PlaceChartProps {
  readonly days: readonly CalendarDay[];
  readonly symptoms: readonly DaySymptoms[];
  /** From the spine outwards, one for each step of the distance. */
  readonly names: readonly string[];
  readonly label: string;
}

const HEIGHT = 230;
const GUTTER = 132;
const TOP = 14;
const SIZE = { most: 6, least: 2.5, share: 0.2 } as const;

/** Each leg has a mark and a place in the day of its own. */
export const LEG_MARKS = { left: 'dot', right: 'ring' } as const satisfies Record<Side, MarkKind>;
const SHARES: Readonly<Record<Side, number>> = { left: 0.35, right: 0.65 };
const SIDES = ['left', 'right'] as const;

/** How far down each leg symptoms went each day: the spine at the top, the toes at the bottom. A table has the places. */
export function PlaceChart({ days, symptoms, names, label }: PlaceChartProps) {
  const furthest = names.length - 1;
  const axis = { from: furthest, to: 0, ticks: names.map((_, i) => i), write: (value: number) => names[value] ?? '' };
  const pointsOf = (side: Side) =>
    symptoms.flatMap(({ day, places }) => {
      const place = places && mostDistant(places, side);
      return place ? [{ day, distance: distanceOf(place) }] : [];
    });
  return (
    <DayAxes days={days} values={axis} label={label} height={HEIGHT} top={TOP} gutter={GUTTER}>
      {({ room, x, y }) => {
        const size = Math.max(SIZE.least, Math.min(SIZE.most, SIZE.share * room));
        return SIDES.map((side) => {
          const points = pointsOf(side);
          return (
            <Group key={side} className="place-leg" data-side={side}>
              <LinePath
                className="place-line"
                data={points}
                x={({ day }) => x(day, SHARES[side])}
                y={({ distance }) => y(distance)}
              />
              {points.map(({ day, distance }) => (
                <Mark key={day} kind={LEG_MARKS[side]} x={x(day, SHARES[side])} y={y(distance)} size={size} />
              ))}
            </Group>
          );
        });
      }}
    </DayAxes>
  );
}
