import { AxisBottom, AxisLeft } from '@visx/axis';
import { Group } from '@visx/group';
import { scaleLinear } from '@visx/scale';
import { Bar, Circle, Line, LinePath } from '@visx/shape';
import type { AngleCurve as Curve } from '../../measure/set-result.ts';
import type { EditedRep } from '../../record/rep-edit.ts';
import type { Deg } from '../../units.ts';
import { belowTick, besideTick } from '../chart/axis-tick.tsx';
import { useChartWidth } from '../chart/chart-width.ts';
import { useWords } from '../words/words-context.tsx';
import './angle-curve.css';
import { degreesIn } from './degrees.ts';
import { lookOf } from './rep-look.ts';

const HEIGHT = 280;
const MARGIN = { top: 34, right: 12, bottom: 30, left: 44 } as const;
/** Least room for a repetition's number, px. */
const NUMBER_ROOM = 16;
const PX_PER_TIME_TICK = 90;
const ANGLE_TICKS = 5;
const PEAK_RADIUS = 4.5;

type Measured = Extract<EditedRep, { kind: 'measured' }>;

/** From a value to px. */
type Scale = (value: number) => number;

interface MarkProps {
  readonly rep: Measured;
  readonly x: Scale;
  readonly y: Scale;
}

/** One repetition: its time as a band, its peak as a dot, its number above. */
function RepMark({ rep: edited, x, y }: MarkProps) {
  const { rep } = edited;
  const look = lookOf(edited);
  const from = x(rep.startMs / 1000);
  const width = Math.max(2, x(rep.endMs / 1000) - from);
  const top = MARGIN.top;
  const bottom = HEIGHT - MARGIN.bottom;
  return (
    <Group className="rep-mark" data-look={look}>
      <Bar x={from} y={top} width={width} height={bottom - top} fill={look === 'partial' ? 'url(#hatch)' : undefined} />
      {look === 'struck' ? (
        <>
          <Line from={{ x: from, y: top }} to={{ x: from + width, y: bottom }} />
          <Line from={{ x: from + width, y: top }} to={{ x: from, y: bottom }} />
        </>
      ) : null}
      <Circle cx={x(rep.peakMs / 1000)} cy={y(rep.peakDeg)} r={PEAK_RADIUS} />
      {width >= NUMBER_ROOM ? (
        <text x={from + width / 2} y={top - 10}>
          {rep.number}
        </text>
      ) : null}
    </Group>
  );
}

/** The angle through the set, with every repetition marked. The table below holds the same in numbers. */
export function AngleCurve({ curve, reps }: { readonly curve: Curve; readonly reps: readonly EditedRep[] }) {
  const { result, locale } = useWords();
  const { parentRef, width } = useChartWidth();
  const measured = reps.flatMap((rep) => (rep.kind === 'measured' ? [rep] : []));
  const angles = [...curve.angleDeg.filter((a) => a !== null), ...measured.map(({ rep }) => rep.peakDeg)];
  const low = Math.min(
    0,
    ...angles.slice(0, 1),
    angles.reduce<number>((a, b) => Math.min(a, b), 0),
  );
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
  const kept = measured.filter((rep) => !rep.struck);
  const widest = kept.reduce<Deg | null>((most, { rep }) => (most === null || rep.rangeDeg > most ? rep.rangeDeg : most), null);
  const alt = result.curveAlt(
    kept.filter(({ rep }) => rep.complete).length,
    kept.filter(({ rep }) => !rep.complete).length,
    widest === null ? null : degreesIn(locale)(widest),
  );
  return (
    <div className="angle-curve" ref={parentRef}>
      <svg width={width} height={HEIGHT} viewBox={`0 0 ${width} ${HEIGHT}`} role="img" aria-label={alt}>
        <defs>
          <pattern id="hatch" width="7" height="7" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
            <rect className="hatch-ground" width="7" height="7" />
            <path className="hatch-line" d="M0 0v7" />
          </pattern>
        </defs>
        {measured.map((rep) => (
          <RepMark key={rep.rep.number} rep={rep} x={x} y={y} />
        ))}
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
