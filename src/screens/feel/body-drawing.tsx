import type { Side } from '../../pose/landmarks.ts';
import type { Felt } from '../../symptoms/felt.ts';
import type { BodyRegion, Place } from '../../symptoms/place.ts';
import { useWords } from '../words/words-context.tsx';
import './body-drawing.css';
import { hasPlace } from './feeling.ts';

type Shape = readonly [region: BodyRegion, d: string];

/**
 * Half a body each, the half to the right of the middle line; the other one is its mirror image. No region is narrower than 23 units, 44 px at the width it
 * is shown in: a finger must hit it.
 */
const BACK: readonly Shape[] = [
  ['low-back', 'M0 0h40q8 0 7 8l-3 34q0 6-6 6H0z'],
  ['buttock', 'M0 52h46q10 0 10 12v24q0 14-14 14H0z'],
  ['thigh-back', 'M2 106h26v72H8q-4 0-4-6z'],
  ['thigh-outer', 'M32 106h20q6 0 6 8l-4 58q-1 6-6 6H32z'],
  ['knee', 'M5 182h50l-2 32H7z'],
  ['calf-back', 'M6 218h23v70H14q-5 0-6-6z'],
  ['calf-outer', 'M33 218h18q6 0 6 8l-5 56q-1 6-6 6H33z'],
  ['ankle', 'M12 292h38v24H12z'],
  ['heel', 'M10 320h42v10q0 14-21 14t-21-14z'],
  ['sole', 'M6 350h44q8 0 8 8v16q0 8-8 8H6z'],
];
const FRONT: readonly Shape[] = [
  ['groin', 'M0 52h44q-4 34-44 50z'],
  ['thigh-front', 'M6 106h46q6 0 6 8l-6 58q-1 6-6 6H12q-5 0-6-6z'],
  ['shin', 'M7 218h44q6 0 5 8l-6 56q-1 6-6 6H16q-5 0-6-6z'],
  ['foot-top', 'M10 292h40l8 40H6z'],
  ['big-toe', 'M6 336h23v38q0 8-8 8h-7q-8 0-8-8z'],
  ['small-toes', 'M33 336h24l2 34q0 8-8 8H41q-8 0-8-8z'],
];
/** What of the half body is no place to tap: head, shoulder and arm, and the leg behind the places. */
const OUTLINE =
  'M0-112a24 24 0 0 1 10 46v8q30 4 38 16l20 84q2 8-5 9t-9-7L36-10q2 20 4 50 18 26 16 60l-4 84 4 60-6 70 8 64H2V104L0 100z';

interface FigureProps {
  readonly title: string;
  readonly shapes: readonly Shape[];
  /** The side of the person on the right of the picture: seen from behind it is their right, from the front their left. */
  readonly onTheRight: Side;
  readonly felt: Felt;
  readonly onPlace: (place: Place) => void;
}

function Figure({ title, shapes, onTheRight, felt, onPlace }: FigureProps) {
  const { sides } = useWords();
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
      <svg viewBox="-78 -116 156 502" aria-hidden="true">
        <path className="body-outline" d={OUTLINE} />
        <path className="body-outline" d={OUTLINE} transform="scale(-1 1)" />
        <g transform="translate(2 0)">{half(onTheRight)}</g>
        <g transform="translate(-2 0) scale(-1 1)">{half(onTheRight === 'left' ? 'right' : 'left')}</g>
      </svg>
      <p className="body-sides small" aria-hidden="true">
        <span>{sides[onTheRight === 'left' ? 'right' : 'left'].leg}</span>
        <span>{sides[onTheRight].leg}</span>
      </p>
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
