import { median } from '../../signal/median.ts';
import type { Deg } from '../../units.ts';
import { keptReps } from '../parts/kept-reps.ts';
import { scaleOf } from '../result/scale.ts';
import { useWidth } from '../result/use-width.ts';
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
  const { ref, width } = useWidth<HTMLDivElement>(900);
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
  const x = scaleOf(
    Math.min(0, ...all),
    Math.max(...all),
    MARGIN.left,
    width - MARGIN.right,
    Math.max(2, Math.floor(width / PX_PER_TICK)),
  );
  const bottom = HEIGHT - MARGIN.bottom;
  const band = { from: x.at(Math.max(0, reference - limitDeg)), to: x.at(reference + limitDeg) };
  return (
    <figure className="range-dots">
      <div ref={ref}>
        <svg viewBox={`0 0 ${width} ${HEIGHT}`} width={width} height={HEIGHT} role="img" aria-label={compare.dots}>
          <rect className="dots-band" x={band.from} y={MARGIN.top} width={band.to - band.from} height={bottom - MARGIN.top} />
          <path className="dots-axis" d={`M${MARGIN.left} ${bottom}H${width - MARGIN.right}`} />
          {x.ticks.map((tick) => (
            <text key={tick} className="dots-tick" x={x.at(tick)} y={bottom + 22}>
              {tick}°
            </text>
          ))}
          {rows.map((row, i) => {
            const y = MARGIN.top + 46 + i * ROW;
            return (
              <g key={row.set.id} className="dots-row" data-row={i}>
                <text className="dots-name" x={MARGIN.left + 6} y={y - 20}>
                  {row.name}
                </text>
                {row.reps.map((rep) => (
                  <circle key={rep.number} cx={x.at(rep.rangeDeg)} cy={y} r="6" />
                ))}
                <path className="dots-middle" d={`M${x.at(row.middle)} ${y - 15}v30`} />
              </g>
            );
          })}
        </svg>
      </div>
      <figcaption className="soft small">{compare.dotsCaption}</figcaption>
    </figure>
  );
}
