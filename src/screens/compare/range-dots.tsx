import { AxisBottom } from '@visx/axis';
import { Group } from '@visx/group';
import { scaleLinear } from '@visx/scale';
import { Bar, Circle, Line } from '@visx/shape';
import { median } from '../../signal/median.ts';
import type { Deg } from '../../units.ts';
import { belowTick } from '../chart/axis-tick.tsx';
import { useChartWidth } from '../chart/chart-width.ts';
import { keptReps } from '../parts/kept-reps.ts';
import type { ShownSet } from '../services.ts';
import { useWords } from '../words/words-context.tsx';

interface NamedSet {
  readonly name: string;
  readonly set: ShownSet;
}

const HEIGHT = 190;
const MARGIN = { top: 12, right: 16, bottom: 34, left: 16 } as const;
const ROW = 72;
const PX_PER_TICK = 70;

/** Every counted repetition of two sets on one scale, the middle of each as a bar, and how far from the second one a difference must reach to be sure. */
export function RangeDots({
  sets: [own, other],
  limitDeg,
}: {
  readonly sets: readonly [NamedSet, NamedSet];
  readonly limitDeg: Deg;
}) {
  const { compare } = useWords();
  const { parentRef, width } = useChartWidth();
  const repsOf = ({ set }: NamedSet) => keptReps(set).filter((rep) => rep.complete);
  const rows = [own, other].map((named) => ({
    ...named,
    reps: repsOf(named),
    middle: median(repsOf(named).map((rep) => rep.rangeDeg)) ?? 0,
  }));
  const reference = rows[1]?.middle ?? 0;
  const all = [
    ...rows.flatMap((row) => row.reps.map((rep) => rep.rangeDeg)),
    reference + limitDeg,
    Math.max(0, reference - limitDeg),
  ];
  const right = Math.max(MARGIN.left + 1, width - MARGIN.right);
  const x = scaleLinear<number>({ domain: [Math.min(0, ...all), Math.max(...all)], range: [MARGIN.left, right] });
  const bottom = HEIGHT - MARGIN.bottom;
  const band = { from: x(Math.max(0, reference - limitDeg)), to: x(reference + limitDeg) };
  return (
    <figure className="range-dots">
      <div ref={parentRef}>
        <svg viewBox={`0 0 ${width} ${HEIGHT}`} width={width} height={HEIGHT} role="img" aria-label={compare.dots}>
          <Bar className="dots-band" x={band.from} y={MARGIN.top} width={band.to - band.from} height={bottom - MARGIN.top} />
          <AxisBottom
            scale={x}
            top={bottom}
            numTicks={Math.max(2, Math.floor(width / PX_PER_TICK))}
            tickFormat={(angle) => `${angle}°`}
            tickComponent={belowTick}
            tickLength={4}
            axisLineClassName="dots-axis"
            hideTicks
          />
          {rows.map((row, i) => {
            const y = MARGIN.top + 46 + i * ROW;
            return (
              <Group key={row.set.id} className="dots-row" data-row={i}>
                <text className="dots-name" x={MARGIN.left + 6} y={y - 20}>
                  {row.name}
                </text>
                {row.reps.map((rep) => (
                  <Circle key={rep.number} cx={x(rep.rangeDeg)} cy={y} r={6} />
                ))}
                <Line className="dots-middle" from={{ x: x(row.middle), y: y - 15 }} to={{ x: x(row.middle), y: y + 15 }} />
              </Group>
            );
          })}
        </svg>
      </div>
      <figcaption className="soft small">{compare.dotsCaption}</figcaption>
    </figure>
  );
}
