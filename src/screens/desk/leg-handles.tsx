import { useEffect, useRef, useState } from 'react';
import type { PictureSize } from '../../capture/frame.ts';
import type { PointName } from '../../measure/angle-of-points.ts';
import type { LegDrawing } from '../../measure/live-view.ts';
import { px } from '../../units.ts';
import { useStillWords } from '../words/still-catalogues.ts';
import './leg-handles.css';
import { Magnifier } from './magnifier.tsx';
import type { StillImage } from './still-image.ts';
import type { ViewBox } from './view-box.ts';

/** How near a finger must come to take a point, CSS px: as far as the handles reach. */
const REACH_PX = 44;
const STEP_PX = 1;
const LARGE_STEP_PX = 10;

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

interface LegHandlesProps {
  readonly image: StillImage;
  readonly size: PictureSize;
  /** The part of the picture that is shown. */
  readonly box: ViewBox;
  readonly names: readonly PointName[];
  readonly leg: LegDrawing;
  readonly onLeg: (leg: LegDrawing) => void;
}

interface Drag {
  readonly name: PointName;
  /** From the pointer to the point when it was taken, px of the picture: the point does not jump under the finger. */
  readonly dx: number;
  readonly dy: number;
}

/** The leg's points as handles: dragged, or moved with the arrow keys. */
export function LegHandles({ image, size, box, names, leg, onLeg }: LegHandlesProps) {
  const still = useStillWords();
  const [active, setActive] = useState<PointName | null>(null);
  const drag = useRef<Drag | null>(null);
  const latest = useRef(leg);
  useEffect(() => {
    latest.current = leg;
  }, [leg]);
  const moveTo = (name: PointName, x: number, y: number) => {
    const within = (value: number, from: number, length: number, most: number) =>
      px(Math.max(from, 0, Math.min(from + length, most, value)));
    const point = { x: within(x, box.x, box.width, size.width), y: within(y, box.y, box.height, size.height) };
    latest.current = { ...latest.current, [name]: point };
    onLeg(latest.current);
  };
  /** Where the pointer is, px of the picture, and how many CSS px one of them is. */
  const pointerIn = (event: React.PointerEvent<HTMLElement>) => {
    const { left, top, width } = event.currentTarget.getBoundingClientRect();
    const scale = width / box.width;
    return { x: box.x + (event.clientX - left) / scale, y: box.y + (event.clientY - top) / scale, scale };
  };
  const take = (event: React.PointerEvent<HTMLElement>) => {
    const { x, y, scale } = pointerIn(event);
    const far = (name: PointName) => Math.hypot(leg[name].x - x, leg[name].y - y) * scale;
    const [nearest] = names.toSorted((a, b) => far(a) - far(b));
    if (!nearest || far(nearest) > REACH_PX) return;
    // Of two handles that lie over each other the nearer one is meant, whichever is on top.
    event.preventDefault();
    event.currentTarget.setPointerCapture(event.pointerId);
    event.currentTarget.querySelector<HTMLElement>(`[data-point="${nearest}"]`)?.focus();
    drag.current = { name: nearest, dx: leg[nearest].x - x, dy: leg[nearest].y - y };
  };
  const pull = (event: React.PointerEvent<HTMLElement>) => {
    if (!drag.current) return;
    const { x, y } = pointerIn(event);
    moveTo(drag.current.name, x + drag.current.dx, y + drag.current.dy);
  };
  const placeOf = (name: PointName) => ({
    left: `${(100 * (leg[name].x - box.x)) / box.width}%`,
    top: `${(100 * (leg[name].y - box.y)) / box.height}%`,
  });
  const step = (name: PointName, event: React.KeyboardEvent) => {
    const arrow = ARROWS[event.key];
    if (!arrow) return;
    event.preventDefault();
    const by = event.shiftKey ? LARGE_STEP_PX : STEP_PX;
    const { x, y } = latest.current[name];
    moveTo(name, x + by * arrow[0], y + by * arrow[1]);
  };
  return (
    <div
      className="leg-handles"
      onPointerDown={take}
      onPointerMove={pull}
      onPointerUp={() => {
        drag.current = null;
      }}
      onPointerCancel={() => {
        drag.current = null;
      }}
    >
      {names.map((name) => (
        <button
          key={name}
          type="button"
          className="leg-handle"
          data-point={name}
          aria-label={still.pointAt(still.points[name], Math.round(leg[name].x), Math.round(leg[name].y))}
          style={placeOf(name)}
          onFocus={() => setActive(name)}
          onBlur={() => setActive(null)}
          onKeyDown={(event) => step(name, event)}
        />
      ))}
      {active ? (
        <span className="leg-handle-name" aria-hidden="true" style={placeOf(active)}>
          {still.points[active]}
        </span>
      ) : null}
      {active ? <Magnifier image={image} size={size} at={leg[active]} onRight={leg[active].x < box.x + box.width / 2} /> : null}
    </div>
  );
}
