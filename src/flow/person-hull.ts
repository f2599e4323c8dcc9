import type { Point } from './segment-shape.ts';

/** Landmarks lie inside the body: what lies within this share of the hull's diagonal of them may still be body, cloth, hair or shadow. Chosen, generous. */
const MARGIN_SHARE = 0.12;

/** The picture of a person: the convex hull of their landmarks, counter-clockwise or clockwise, and how far the body reaches beyond it. */
export interface PersonHull {
  readonly corners: readonly Point[];
  readonly marginPx: number;
}

/** Convex hull by the monotone chain. Andrew 1979, Inf Process Lett 9:216. */
export function personHull(points: readonly Point[]): PersonHull {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y);
  const chain = (list: readonly Point[]): Point[] => {
    const out: Point[] = [];
    for (const p of list) {
      while (out.length > 1 && turnAt(out[out.length - 2] as Point, out[out.length - 1] as Point, p) <= 0) out.pop();
      out.push(p);
    }
    return out.slice(0, -1);
  };
  const corners = [...chain(sorted), ...chain(sorted.reverse())];
  const across = (pick: (p: Point) => number) => Math.max(...points.map(pick)) - Math.min(...points.map(pick));
  return {
    corners,
    marginPx:
      MARGIN_SHARE *
      Math.hypot(
        across((p) => p.x),
        across((p) => p.y),
      ),
  };
}

/** Whether a place may show the person. */
export function mayShow({ corners, marginPx }: PersonHull, x: number, y: number): boolean {
  let inside = corners.length > 2;
  for (let i = 0; i < corners.length; i++) {
    const a = corners[i] as Point;
    const b = corners[(i + 1) % corners.length] as Point;
    if (turnAt(a, b, { x, y }) < 0) inside = false;
    const dx = b.x - a.x;
    const dy = b.y - a.y;
    const share = Math.max(0, Math.min(1, ((x - a.x) * dx + (y - a.y) * dy) / (dx * dx + dy * dy || 1)));
    if (Math.hypot(x - a.x - share * dx, y - a.y - share * dy) <= marginPx) return true;
  }
  return inside;
}

/** Twice the signed area of the triangle a, b, c. */
const turnAt = (a: Point, b: Point, c: Point): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
