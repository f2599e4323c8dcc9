import { useEffect, useRef } from 'react';
import type { LegAngle } from '../../angles/joint-angle.ts';
import type { PictureSize } from '../../capture/frame.ts';
import { POINTS_OF } from '../../measure/angle-of-points.ts';
import type { LegDrawing, PicturePoint } from '../../measure/live-view.ts';
import { useWords } from '../words/words-context.tsx';
import { LegHandles } from './leg-handles.tsx';
import type { StillImage } from './still-image.ts';
import './still-picture.css';
import type { ViewBox } from './view-box.ts';

interface StillPictureProps {
  readonly image: StillImage;
  readonly size: PictureSize;
  readonly box: ViewBox;
  readonly angle: LegAngle;
  readonly leg: LegDrawing | null;
  /** Whether the points may be moved. */
  readonly editing: boolean;
  readonly onLeg: (leg: LegDrawing) => void;
}

const path = (points: readonly PicturePoint[]) => points.map(({ x, y }) => `${x},${y}`).join(' ');

/** The lines between which the angle lies, and those that it is read against. */
function linesOf(angle: LegAngle, { hip, knee, ankle, heel, toe }: LegDrawing) {
  const level = ({ x, y }: PicturePoint, towards: PicturePoint): readonly PicturePoint[] => [
    { x, y },
    { ...towards, y },
  ];
  switch (angle) {
    case 'leg-elevation':
      return { leg: [[hip, knee, ankle]], against: [[hip, ankle], level(hip, ankle)] };
    case 'knee-flexion':
      return { leg: [[hip, knee, ankle]], against: [] };
    case 'ankle-dorsiflexion':
      return {
        leg: [
          [knee, ankle],
          [heel, toe],
        ],
        against: [],
      };
    case 'foot-elevation':
      return { leg: [[heel, toe]], against: [level(heel, toe)] };
    default:
      return angle satisfies never;
  }
}

/** A picture, or a part of it, and over it the lines that are measured, with their points as handles while they may be moved. */
export function StillPicture({ image, size, box, angle, leg, editing, onLeg }: StillPictureProps) {
  const { set } = useWords();
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d', { alpha: false });
    context?.drawImage(image, box.x, box.y, box.width, box.height, 0, 0, size.width, size.height);
  }, [image, size, box]);
  const lines = leg && linesOf(angle, leg);
  return (
    <div
      className="still-picture"
      style={{ aspectRatio: `${size.width} / ${size.height}`, maxInlineSize: `calc(65vh * ${size.width / size.height})` }}
    >
      <canvas ref={canvas} role="img" aria-label={set.picture} width={size.width} height={size.height} />
      {lines ? (
        <svg viewBox={`${box.x} ${box.y} ${box.width} ${box.height}`} aria-hidden="true">
          {lines.against.map((line) => (
            <polyline key={path(line)} className="still-against" points={path(line)} />
          ))}
          {['still-edge', 'still-leg'].flatMap((look) =>
            lines.leg.map((line) => <polyline key={`${look} ${path(line)}`} className={look} points={path(line)} />),
          )}
        </svg>
      ) : null}
      {editing && leg ? (
        <LegHandles image={image} size={size} box={box} names={POINTS_OF[angle]} leg={leg} onLeg={onLeg} />
      ) : null}
    </div>
  );
}
