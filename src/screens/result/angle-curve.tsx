import type { AngleCurve as Curve } from '../../measure/set-result.ts';
import type { EditedRep } from '../../record/rep-edit.ts';
import type { Deg } from '../../units.ts';
import { useWords } from '../words/words-context.tsx';
import './angle-curve.css';
import { curvePath } from './curve-path.ts';
import { degreesIn } from './degrees.ts';
import { lookOf } from './rep-look.ts';
import { type Scale, scaleOf } from './scale.ts';
import { useWidth } from './use-width.ts';

const HEIGHT = 280;
const MARGIN = { top: 34, right: 12, bottom: 30, left: 44 } as const;
/** Least room for a repetition's number, px. */
const NUMBER_ROOM = 16;
const PX_PER_TIME_TICK = 90;

type Measured = Extract<EditedRep, { kind: 'measured' }>;

interface MarkProps {
  readonly rep: Measured;
  readonly x: Scale;
  readonly y: Scale;
}

/** One repetition: its time as a band, its peak as a dot, its number above. */
function RepMark({ rep: edited, x, y }: MarkProps) {
  const { rep } = edited;
  const look = lookOf(edited);
  const from = x.at(rep.startMs / 1000);
  const width = Math.max(2, x.at(rep.endMs / 1000) - from);
  const top = MARGIN.top;
  const bottom = HEIGHT - MARGIN.bottom;
  return (
    <g className="rep-mark" data-look={look}>
      <rect x={from} y={top} width={width} height={bottom - top} fill={look === 'partial' ? 'url(#hatch)' : undefined} />
      {look === 'struck' ? (
        <path d={`M${from} ${top}L${from + width} ${bottom}M${from + width} ${top}L${from} ${bottom}`} />
      ) : null}
      <circle cx={x.at(rep.peakMs / 1000)} cy={y.at(rep.peakDeg)} r="4.5" />
      {width >= NUMBER_ROOM ? (
        <text x={from + width / 2} y={top - 10}>
          {rep.number}
        </text>
      ) : null}
    </g>
  );
}

/** The angle through the set, with every repetition marked. The table below holds the same in numbers. */
export function AngleCurve({ curve, reps }: { readonly curve: Curve; readonly reps: readonly EditedRep[] }) {
  const { result, locale } = useWords();
  const { ref, width } = useWidth<HTMLDivElement>(900);
  const measured = reps.flatMap((rep) => (rep.kind === 'measured' ? [rep] : []));
  const angles = [...curve.angleDeg.filter((a) => a !== null), ...measured.map(({ rep }) => rep.peakDeg)];
  const low = Math.min(
    0,
    ...angles.slice(0, 1),
    angles.reduce<number>((a, b) => Math.min(a, b), 0),
  );
  const high = angles.reduce<number>((a, b) => Math.max(a, b), low + 5);
  const x = scaleOf(
    (curve.tMs[0] ?? 0) / 1000,
    (curve.tMs.at(-1) ?? 1000) / 1000,
    MARGIN.left,
    width - MARGIN.right,
    Math.max(2, Math.floor((width - MARGIN.left - MARGIN.right) / PX_PER_TIME_TICK)),
  );
  const y = scaleOf(low, high, HEIGHT - MARGIN.bottom, MARGIN.top + 6, 5);
  const kept = measured.filter((rep) => !rep.struck);
  const widest = kept.reduce<Deg | null>((most, { rep }) => (most === null || rep.rangeDeg > most ? rep.rangeDeg : most), null);
  const alt = result.curveAlt(
    kept.filter(({ rep }) => rep.complete).length,
    kept.filter(({ rep }) => !rep.complete).length,
    widest === null ? null : degreesIn(locale)(widest),
  );
  return (
    <div className="angle-curve" ref={ref}>
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
        {y.ticks.map((tick) => (
          <g className="curve-tick" key={tick}>
            <path d={`M${MARGIN.left} ${y.at(tick)}H${width - MARGIN.right}`} />
            <text x={MARGIN.left - 8} y={y.at(tick) + 5} textAnchor="end">
              {tick}°
            </text>
          </g>
        ))}
        {x.ticks.map((tick) => (
          <g className="curve-tick" key={tick}>
            <text x={x.at(tick)} y={HEIGHT - 8} textAnchor="middle">
              {tick} {result.seconds}
            </text>
          </g>
        ))}
        <path className="curve-line" d={curvePath(curve, (tMs) => x.at(tMs / 1000), y.at)} />
      </svg>
    </div>
  );
}
