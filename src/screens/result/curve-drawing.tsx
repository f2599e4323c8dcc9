import { AxisBottom, AxisLeft } from '@visx/axis';
import { scaleLinear } from '@visx/scale';
import { Line, LinePath } from '@visx/shape';
import type { ReactNode } from 'react';
import type { AngleCurve } from '../../measure/set-result.ts';
import type { Deg } from '../../units.ts';
import { belowTick, besideTick } from '../chart/axis-tick.tsx';
import { useChartWidth } from '../chart/chart-width.ts';
import { useWords } from '../words/words-context.tsx';
import './angle-curve.css';

const HEIGHT = 280;
const MARGIN = { top: 34, right: 12, bottom: 30, left: 44 } as const;
const PX_PER_TIME_TICK = 90;
const ANGLE_TICKS = 5;

/** Where times and angles lie, px. */
export interface CurveArea {
  readonly top: number;
  readonly bottom: number;
  readonly x: (seconds: number) => number;
  readonly y: (deg: number) => number;
}

interface CurveDrawingProps {
  readonly curve: AngleCurve;
  /** What else must lie within the drawing. */
  readonly peaksDeg: readonly Deg[];
  /** What the drawing says, for those who do not see it. */
  readonly label: string;
  /** What is marked behind the curve. */
  readonly marks: (area: CurveArea) => ReactNode;
}

/** The angle through a set over marks of its repetitions. */
export function CurveDrawing({ curve, peaksDeg, label, marks }: CurveDrawingProps) {
  const { result } = useWords();
  const { parentRef, width } = useChartWidth();
  const angles = [...curve.angleDeg.filter((a) => a !== null), ...peaksDeg];
  const low = angles.reduce<number>((a, b) => Math.min(a, b), 0);
  const high = angles.reduce<number>((a, b) => Math.max(a, b), low + 5);
  const right = Math.max(MARGIN.left + 1, width - MARGIN.right);
  const bottom = HEIGHT - MARGIN.bottom;
  const x = scaleLinear<number>({
    domain: [(curve.tMs[0] ?? 0) / 1000, (curve.tMs.at(-1) ?? 1000) / 1000],
    range: [MARGIN.left, right],
  });
  const y = scaleLinear<number>({ domain: [low, high], range: [bottom, MARGIN.top + 6] });
  const angleTicks = y.ticks(ANGLE_TICKS);
  const points = curve.tMs.map((tMs, i) => ({ tMs, angle: curve.angleDeg[i] ?? null }));
  return (
    <div className="angle-curve" ref={parentRef}>
      <svg width={width} height={HEIGHT} viewBox={`0 0 ${width} ${HEIGHT}`} role="img" aria-label={label}>
        <defs>
          <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect className="hatch-ground" width="7" height="7" />
            <path className="hatch-line" d="M0 0v7" />
          </pattern>
        </defs>
        {marks({ top: MARGIN.top, bottom, x, y })}
        {angleTicks.map((tick) => (
          <Line key={tick} className="axis-grid" from={{ x: MARGIN.left, y: y(tick) }} to={{ x: right, y: y(tick) }} />
        ))}
        <AxisLeft
          scale={y}
          left={MARGIN.left}
          tickValues={angleTicks}
          tickFormat={(angle) => `${angle}°`}
          tickComponent={besideTick}
          tickLength={4}
          hideAxisLine
          hideTicks
        />
        <AxisBottom
          scale={x}
          top={bottom}
          numTicks={Math.max(2, Math.floor((right - MARGIN.left) / PX_PER_TIME_TICK))}
          tickFormat={(seconds) => `${seconds} ${result.seconds}`}
          tickComponent={belowTick}
          tickLength={4}
          hideAxisLine
          hideTicks
        />
        <LinePath
          className="curve-line"
          data={points}
          defined={({ angle }) => angle !== null}
          x={({ tMs }) => x(tMs / 1000)}
          y={({ angle }) => y(angle ?? 0)}
        />
      </svg>
    </div>
  );
}
