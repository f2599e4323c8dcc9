import type { Target } from '../../dose/prescribed-exercise.ts';
import type { RangeProgress } from '../../dose/range-progress.ts';
import type { CalendarDay } from '../../symptoms/calendar-day.ts';
import { DayChart } from '../chart/day-chart.tsx';
import { useWords } from '../words/words-context.tsx';

interface RangeChartProps {
  readonly range: RangeProgress;
  readonly target: Target;
  readonly days: readonly CalendarDay[];
  /** px. */
  readonly height?: number;
}

/** How far one leg went each day, with the error, against the target and the other leg. */
export function RangeChart({ range, target, days, height }: RangeChartProps) {
  const { progress } = useWords();
  const other = range.otherSide?.ok ? range.otherSide.value.referenceDeg : null;
  return (
    <DayChart
      days={days}
      values={range.days.map(({ day, rangeDeg, bandDeg }) => ({ day, value: rangeDeg, band: bandDeg }))}
      target={target.kind === 'range' ? { from: target.fromDeg, to: target.toDeg } : null}
      reference={other === null ? null : { name: progress.otherLeg, value: other }}
      scale={{ from: 0, to: 0 }}
      unit="°"
      {...(height === undefined ? {} : { height })}
      label={target.kind === 'range' ? progress.rangeDrawnTarget : progress.rangeDrawn}
    />
  );
}
