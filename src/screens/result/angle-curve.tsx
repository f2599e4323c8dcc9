import { Group } from '@visx/group';
import { Bar, Circle, Line } from '@visx/shape';
import type { AngleCurve as Curve } from '../../measure/set-result.ts';
import type { EditedRep } from '../../record/rep-edit.ts';
import type { Deg } from '../../units.ts';
import { useWords } from '../words/words-context.tsx';
import { type CurveArea, CurveDrawing } from './curve-drawing.tsx';
import { degreesIn } from './degrees.ts';
import { lookOf } from './rep-look.ts';

/** Least room for a repetition's number, px. */
const NUMBER_ROOM = 16;
const PEAK_RADIUS = 4.5;

type Measured = Extract<EditedRep, { kind: 'measured' }>;

/** One repetition: its time as a band, its peak as a dot, its number above. */
function RepMark({ rep: edited, area: { top, bottom, x, y } }: { readonly rep: Measured; readonly area: CurveArea }) {
  const { rep } = edited;
  const look = lookOf(edited);
  const from = x(rep.startMs / 1000);
  const width = Math.max(2, x(rep.endMs / 1000) - from);
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
  const measured = reps.flatMap((rep) => (rep.kind === 'measured' ? [rep] : []));
  const kept = measured.filter((rep) => !rep.struck);
  const widest = kept.reduce<Deg | null>((most, { rep }) => (most === null || rep.rangeDeg > most ? rep.rangeDeg : most), null);
  const label = result.curveAlt(
    kept.filter(({ rep }) => rep.complete).length,
    kept.filter(({ rep }) => !rep.complete).length,
    widest === null ? null : degreesIn(locale)(widest),
  );
  return (
    <CurveDrawing
      curve={curve}
      peaksDeg={measured.map(({ rep }) => rep.peakDeg)}
      label={label}
      marks={(area) => measured.map((rep) => <RepMark key={rep.rep.number} rep={rep} area={area} />)}
    />
  );
}
