import type { PictureSize } from '../../capture/frame.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import type { LegDrawing, PicturePoint } from '../../measure/live-view.ts';
import { px } from '../../units.ts';
import { type LegColours, plate, wiped } from './overlay.ts';
import type { TargetBand } from './target-band.ts';

/** The joint at which an exercise's angle is written. */
const JOINT: Record<ExerciseId, 'hip' | 'knee' | 'ankle' | 'toe'> = {
  'foot-tap': 'ankle',
  'leg-raise': 'hip',
  'nerve-glide': 'ankle',
  'heel-stand': 'ankle',
  'knee-straighten': 'knee',
  'toe-lift': 'toe',
};

/** Shares of the picture's longer side. Chosen: seen from three metres, the leg under it stays seen too. */
const LINE = 0.012;
const DOT = 0.013;
const JOINT_DOT = 0.02;
const BAND = 0.022;
const DASH = 0.018;
const TEXT = 0.055;

/** What is drawn besides the leg itself. */
export interface LegMarks {
  readonly exercise: ExerciseId;
  /** The angle as it is written; null when not measured. */
  readonly angle: string | null;
  /** Where the moving end is to come; null: nothing is prescribed. */
  readonly target: TargetBand | null;
  /** Where symptoms begin; null: not known. */
  readonly limit: TargetBand | null;
}

function strokeThrough(context: CanvasRenderingContext2D, points: readonly PicturePoint[]): void {
  context.beginPath();
  for (const { x, y } of points) context.lineTo(x, y);
  context.stroke();
}

function dot(context: CanvasRenderingContext2D, { x, y }: PicturePoint, radius: number): void {
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  context.fill();
  context.stroke();
}

/** The band on the circle of the moving end: pale and thin until it is reached. */
function band(
  context: CanvasRenderingContext2D,
  { centre, end, radius, fromRad, toRad, reached }: TargetBand,
  scale: number,
  colours: LegColours,
): void {
  const [from, to] = fromRad < toRad ? [fromRad, toRad] : [toRad, fromRad];
  for (const [width, colour] of [
    [BAND * 1.5, colours.edge],
    [BAND, reached ? colours.reached : colours.target],
  ] as const) {
    context.lineCap = 'butt';
    context.lineWidth = scale * width;
    context.strokeStyle = colour;
    context.beginPath();
    context.arc(centre.x, centre.y, radius, from, to);
    context.stroke();
  }
  // Where the moving end points now.
  const nowRad = Math.atan2(end.y - centre.y, end.x - centre.x);
  context.lineWidth = scale * LINE * 0.5;
  strokeThrough(context, [end, { x: px(centre.x + radius * Math.cos(nowRad)), y: px(centre.y + radius * Math.sin(nowRad)) }]);
}

/** The line from the joint outwards at which symptoms begin. */
function limitLine(
  context: CanvasRenderingContext2D,
  { centre, radius, toRad }: TargetBand,
  scale: number,
  colours: LegColours,
): void {
  const at = (share: number): PicturePoint => ({
    x: px(centre.x + radius * share * Math.cos(toRad)),
    y: px(centre.y + radius * share * Math.sin(toRad)),
  });
  context.setLineDash([scale * DASH, scale * DASH]);
  for (const [width, colour] of [
    [LINE * 1.4, colours.edge],
    [LINE * 0.8, colours.target],
  ] as const) {
    context.lineCap = 'butt';
    context.lineWidth = scale * width;
    context.strokeStyle = colour;
    strokeThrough(context, [at(0.3), at(1.15)]);
  }
  context.setLineDash([]);
}

/**
 * Writes the angle beside its joint.
 * @param clearOf where something else is drawn; null: nothing is
 */
function label(
  context: CanvasRenderingContext2D,
  text: string,
  at: PicturePoint,
  { size, colours, clearOf }: { readonly size: PictureSize; readonly colours: LegColours; readonly clearOf: PicturePoint | null },
): void {
  const scale = Math.max(size.width, size.height);
  const height = scale * TEXT;
  const gap = scale * JOINT_DOT * 1.8;
  // Away from what must stay seen, else to the nearer edge.
  const toLeft = clearOf ? clearOf.x > at.x : at.x < size.width / 2;
  const leftOf = (width: number) => (toLeft ? at.x - gap - width : at.x + gap);
  plate(context, text, { leftOf, y: at.y - height * 0.75, height }, colours);
}

/** Draws the leg over the picture, with the angle at the exercise's joint; wipes what was there before. */
export function drawLeg(
  canvas: HTMLCanvasElement,
  size: PictureSize,
  leg: LegDrawing | null,
  { exercise, angle, target, limit }: LegMarks,
  colours: LegColours,
): void {
  const context = wiped(canvas, size);
  if (!leg) return;
  const scale = Math.max(size.width, size.height);
  if (target) band(context, target, scale, colours);
  if (limit) limitLine(context, limit, scale, colours);
  const lines = [
    [leg.hip, leg.knee, leg.ankle],
    [leg.ankle, leg.heel, leg.toe],
  ];
  context.lineCap = 'round';
  context.lineJoin = 'round';
  for (const [width, colour] of [
    [LINE * 1.8, colours.edge],
    [LINE, colours.line],
  ] as const) {
    context.lineWidth = scale * width;
    context.strokeStyle = colour;
    for (const line of lines) strokeThrough(context, line);
  }
  context.fillStyle = colours.line;
  context.strokeStyle = colours.edge;
  context.lineWidth = scale * LINE * 0.5;
  for (const point of [leg.hip, leg.knee, leg.ankle, leg.toe]) dot(context, point, scale * DOT);
  const joint = leg[JOINT[exercise]];
  dot(context, joint, scale * JOINT_DOT);
  if (angle !== null) label(context, angle, joint, { size, colours, clearOf: (target ?? limit)?.end ?? null });
}
