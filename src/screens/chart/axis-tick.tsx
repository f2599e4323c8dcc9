import type { TickRendererProps } from '@visx/axis';
import './axis-tick.css';

/** How a value is written left of its axis: at the height of its line. */
export const besideTick = ({ x, y, formattedValue }: TickRendererProps) => (
  <text className="axis-tick" x={x - 4} y={y + 5} textAnchor="end">
    {formattedValue}
  </text>
);

/** How a value is written under its axis. */
export const belowTick = ({ x, y, formattedValue }: TickRendererProps) => (
  <text className="axis-tick" x={x} y={y + 8} textAnchor="middle">
    {formattedValue}
  </text>
);
