import type { Side } from '../../pose/landmarks.ts';
import type { Felt } from '../../symptoms/felt.ts';
import type { BodyRegion, Place } from '../../symptoms/place.ts';
import { useWords } from '../words/words-context.tsx';
import './body-drawing.css';
import { hasPlace } from './feeling.ts';

type Shape = readonly [region: BodyRegion, d: string];

/** Half a body each, the half to the right of the middle line; the other one is its mirror image. Rounded boxes: a finger must hit them. */
const BACK: readonly Shape[] = [
  ['low-back', 'M2 4h34q8 0 8 8v30q0 6-6 6H2z'],
  ['buttock', 'M2 52h40q8 0 8 10v24q0 12-14 12H2z'],
  ['thigh-back', 'M4 104h24v76H8q-4 0-4-6z'],
  ['thigh-outer', 'M32 104h12q8 0 7 10l-5 60q-1 6-8 6h-6z'],
  ['knee', 'M8 184h36v34H10z'],
  ['calf-back', 'M10 222h19v66H14q-4 0-4-6z'],
  ['calf-outer', 'M33 222h10q5 0 4 8l-5 52q-1 6-6 6h-3z'],
  ['ankle', 'M12 292h28v24H12z'],
  ['heel', 'M10 320h32v14q0 10-16 10T10 334z'],
  ['sole', 'M8 350h38q6 0 6 6v18q0 6-6 6H8z'],
];
const FRONT: readonly Shape[] = [
  ['groin', 'M2 60h30q-4 26-30 40z'],
  ['thigh-front', 'M6 104h38q6 0 5 8l-6 62q-1 6-6 6H10q-4 0-4-6z'],
  ['shin', 'M10 222h30q4 0 3 6l-5 54q-1 6-6 6H14q-4 0-4-6z'],
  ['foot-top', 'M8 292h32l8 40H8z'],
  ['big-toe', 'M6 336h18v38q0 6-6 6h-6q-6 0-6-6z'],
  ['small-toes', 'M28 336h24l2 32q0 8-8 8H34q-6 0-6-6z'],
];

interface FigureProps {
  readonly title: string;
  readonly shapes: readonly Shape[];
  /** The side of the person on the right of the picture: seen from behind it is their right, from the front their left. */
  readonly onTheRight: Side;
  readonly felt: Felt;
  readonly onPlace: (place: Place) => void;
}

function Figure({ title, shapes, onTheRight, felt, onPlace }: FigureProps) {
  const half = (side: Side) =>
    shapes.map(([region, d]) => (
      // The list beside it is the way for the keyboard and for screen readers.
      // biome-ignore lint/a11y/noStaticElementInteractions: see above.
      <path
        key={`${region} ${side}`}
        d={d}
        data-place={`${region} ${side}`}
        data-felt={hasPlace(felt, { region, side })}
        onClick={() => onPlace({ region, side })}
      />
    ));
  return (
    <figure className="body-figure">
      <svg viewBox="-64 -2 128 388" aria-hidden="true">
        <g transform="translate(6 0)">{half(onTheRight)}</g>
        <g transform="translate(-6 0) scale(-1 1)">{half(onTheRight === 'left' ? 'right' : 'left')}</g>
      </svg>
      <figcaption className="soft small">{title}</figcaption>
    </figure>
  );
}

/** Back and front of a body to tap places on. */
export function BodyDrawing({ felt, onPlace }: Pick<FigureProps, 'felt' | 'onPlace'>) {
  const { feel } = useWords();
  return (
    <div className="body-drawing">
      <Figure title={feel.back} shapes={BACK} onTheRight="right" felt={felt} onPlace={onPlace} />
      <Figure title={feel.front} shapes={FRONT} onTheRight="left" felt={felt} onPlace={onPlace} />
    </div>
  );
}
