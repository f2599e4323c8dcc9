import type { Ref } from 'react';
import { GLIDE_ENDS, type GlideAngles } from '../../dose/glide-pace.ts';
import type { Side } from '../../pose/landmarks.ts';
import './glide-figure.css';

/** Where the two joints turn, in the drawing's units; the raised leg stands at 50 degrees. */
const NECK = { x: 88, y: 178 } as const;
const ANKLE = { x: 246, y: 72 } as const;

/** The parts of the drawing that move. */
export interface GlideParts {
  readonly head: SVGGElement;
  readonly foot: SVGGElement;
}

/** Turns head and foot of the drawing. Seen from the right: up is clockwise for the head, up to the shin is against it for the foot. */
export function poseFigure({ head, foot }: GlideParts, { headDeg, footDeg }: GlideAngles): void {
  head.setAttribute('transform', `rotate(${headDeg.toFixed(2)} ${NECK.x} ${NECK.y})`);
  foot.setAttribute('transform', `rotate(${(-footDeg).toFixed(2)} ${ANKLE.x} ${ANKLE.y})`);
}

interface GlideFigureProps {
  readonly side: Side;
  readonly name: string;
  readonly head: Ref<SVGGElement>;
  readonly foot: Ref<SVGGElement>;
}

/** Somebody on their back, the near leg held up by a strap: pale and still but for foot and head. A left leg is the mirror image. */
export function GlideFigure({ side, name, head, foot }: GlideFigureProps) {
  const { pulled } = GLIDE_ENDS;
  return (
    <svg className="glide-figure" viewBox="0 0 320 214" role="img" aria-label={name}>
      <g transform={side === 'left' ? 'matrix(-1 0 0 1 320 0)' : undefined}>
        <path className="glide-mat" d="M12 206h296" />
        <path className="glide-far" d="M166 190 292 194M294 192l3-24" />
        <path className="glide-strap" d="M226 98 124 144" />
        <path className="glide-body" d="M100 184 164 184" />
        <path className="glide-limb" d="M164 182 246 72" />
        <path className="glide-strap" d="M216 91 237 107" />
        <path className="glide-arm" d="M104 176 112 156 126 143" />
        <g ref={head} transform={`rotate(${pulled.headDeg} ${NECK.x} ${NECK.y})`}>
          <path className="glide-neck" d="M94 180 70 178" />
          <circle className="glide-moves-fill" cx="54" cy="176" r="23" />
          <path className="glide-moves-fill" d="M44 156 50 145 60 155z" />
        </g>
        <g ref={foot} transform={`rotate(${-pulled.footDeg} ${ANKLE.x} ${ANKLE.y})`}>
          <path className="glide-moves" d="M260 80 218 38" />
          <path className="glide-heel" d="M246 72 256 76" />
        </g>
        <g className="glide-arrow" data-cue="point">
          <path d="M208 22a58 58 0 0 1 56-10" />
          <path d="M254 0 266 13 250 20" />
          <path d="M22 164a48 48 0 0 1 14-34" />
          <path d="M20 134 37 128 40 145" />
        </g>
        <g className="glide-arrow" data-cue="pull">
          <path d="M264 12a58 58 0 0 0-56 10" />
          <path d="M214 6 206 23 224 27" />
          <path d="M36 130a48 48 0 0 0-14 34" />
          <path d="M11 150 21 166 36 154" />
        </g>
      </g>
    </svg>
  );
}
