import { Group } from '@visx/group';
import { Bar, Circle, Line } from '@visx/shape';
import type { DayDone } from '../../dose/progress.ts';
import { useWords } from '../words/words-context.tsx';
import { DayAxes } from './day-axes.tsx';
import './done-strip.css';
import { FULLNESS, type Fullness, fullnessOf } from './fullness.ts';

/** A cell's side, px; narrower where days lie close. Chosen. */
const CELL = { most: 26, share: 0.8 } as const;
const HEIGHT = 62;
const TOP = 4;
const REST_RADIUS = 2;
const KEY_SIDE = 20;

interface CellProps {
  readonly full: Fullness;
  /** Its left upper corner and its sides, px. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Filled when all was done, half filled when a part was, crossed out when nothing was, a dot when nothing was due. */
function Cell({ full, x, y, width, height }: CellProps) {
  const half = height / 2;
  if (full === 'rest') return <Circle className="done-rest" cx={x + width / 2} cy={y + half} r={REST_RADIUS} />;
  return (
    <Group className="done-cell" data-full={full}>
      <Bar className="done-edge" x={x} y={y} width={width} height={height} />
      {full === 'all' ? <Bar className="done-fill" x={x} y={y} width={width} height={height} /> : null}
      {full === 'part' ? <Bar className="done-fill" x={x} y={y + half} width={width} height={half} /> : null}
      {full === 'none' ? (
        <>
          <Line className="done-cross" from={{ x, y }} to={{ x: x + width, y: y + height }} />
          <Line className="done-cross" from={{ x, y: y + height }} to={{ x: x + width, y }} />
        </>
      ) : null}
    </Group>
  );
}

interface DoneStripProps {
  /** Days in a row, or weeks. */
  readonly days: readonly DayDone[];
  readonly label: string;
}

/** A row of cells, one a day or week, over those of a chart below: how much of what was due was done. A table has the figures. */
export function DoneStrip({ days, label }: DoneStripProps) {
  return (
    <DayAxes days={days.map(({ day }) => day)} values={null} label={label} height={HEIGHT} top={TOP}>
      {({ top, room, x }) => {
        const width = Math.min(CELL.most, CELL.share * room);
        return days.map((each) => (
          <Cell key={each.day} full={fullnessOf(each)} x={x(each.day) - width / 2} y={top} width={width} height={CELL.most} />
        ));
      }}
    </DayAxes>
  );
}

/** What the cells mean. */
export function DoneKey() {
  const { progress } = useWords();
  return (
    <ul className="chart-key small">
      {FULLNESS.map((full) => (
        <li key={full}>
          <svg className="key-mark" viewBox={`-1 -1 ${KEY_SIDE + 2} ${KEY_SIDE + 2}`} aria-hidden="true">
            <Cell full={full} x={0} y={0} width={KEY_SIDE} height={KEY_SIDE} />
          </svg>
          {progress.dayFull[full]}
        </li>
      ))}
    </ul>
  );
}
