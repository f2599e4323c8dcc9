import { Bar, Line } from '@visx/shape';
import { ErrorBar, Mark, type MarkKind } from '../chart/mark.tsx';

/** What stands in a key. */
export type KeySign = MarkKind | 'error' | 'band' | 'reference';

const SIDE = 20;
const MIDDLE = SIDE / 2;
const RADIUS = 6;

function Sign({ sign }: { readonly sign: KeySign }) {
  if (sign === 'error') return <ErrorBar x={MIDDLE} from={1} to={SIDE - 1} size={RADIUS} />;
  if (sign === 'band') return <Bar className="day-chart-target" x={0} y={3} width={SIDE} height={SIDE - 6} />;
  if (sign === 'reference')
    return <Line className="day-chart-reference" from={{ x: 0, y: MIDDLE }} to={{ x: SIDE, y: MIDDLE }} />;
  return <Mark kind={sign} x={MIDDLE} y={MIDDLE} size={RADIUS} />;
}

/** What the marks of a chart mean. */
export function ChartKey({ signs }: { readonly signs: readonly (readonly [sign: KeySign, name: string])[] }) {
  return (
    <ul className="chart-key small">
      {signs.map(([sign, name]) => (
        <li key={sign}>
          <svg className="key-mark" viewBox={`0 0 ${SIDE} ${SIDE}`} aria-hidden="true">
            <Sign sign={sign} />
          </svg>
          {name}
        </li>
      ))}
    </ul>
  );
}
