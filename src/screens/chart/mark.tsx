import { Group } from '@visx/group';
import { Circle, Line, Polygon } from '@visx/shape';
import './mark.css';

/** The shapes that values are told apart by, on paper and without colour. */
export type MarkKind = 'dot' | 'ring' | 'up' | 'down';

interface MarkProps {
  readonly kind: MarkKind;
  readonly x: number;
  readonly y: number;
  /** About its radius, px. */
  readonly size: number;
}

/** A triangle is a little larger than a circle of as much ink. */
const CORNERED = 1.3;

/** One value's mark: a filled or hollow circle, a triangle that points up or down. */
export function Mark({ kind, x, y, size }: MarkProps) {
  const center = { x, y };
  switch (kind) {
    case 'dot':
    case 'ring':
      return <Circle className="mark" data-mark={kind} cx={x} cy={y} r={size} />;
    case 'up':
      return <Polygon className="mark" data-mark={kind} sides={3} size={CORNERED * size} center={center} rotate={90} />;
    case 'down':
      return <Polygon className="mark" data-mark={kind} sides={3} size={CORNERED * size} center={center} rotate={-90} />;
    default:
      return kind satisfies never;
  }
}

/** How far a value may be off: a line with an end on each side. @param from,to px */
export function ErrorBar({ x, from, to, size }: { x: number; from: number; to: number; size: number }) {
  const end = (y: number) => <Line from={{ x: x - size, y }} to={{ x: x + size, y }} />;
  return (
    <Group className="error-bar">
      <Line from={{ x, y: from }} to={{ x, y: to }} />
      {end(from)}
      {end(to)}
    </Group>
  );
}
