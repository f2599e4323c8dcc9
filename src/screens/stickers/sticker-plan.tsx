import type { Side } from '../../pose/landmarks.ts';
import { toesSeenFromInside } from '../../stickers/arrange.ts';
import type { StickerName } from '../../stickers/sticker-name.ts';
import { useStickerWords } from '../words/sticker-catalogues.ts';
import type { StickerJoint } from '../words/sticker-words.ts';
import './sticker-plan.css';

const WIDTH = 260;

interface Place {
  readonly name: StickerName;
  readonly at: readonly [number, number];
  /** Where its name stands. */
  readonly label: readonly [number, number];
}

/** On the foot as drawn, toes to the right. */
const PLACES: Readonly<Record<StickerJoint, readonly Place[]>> = {
  toe: [
    { name: 'tip', at: [224, 113], label: [232, 72] },
    { name: 'knuckle', at: [180, 111], label: [178, 46] },
    { name: 'arch', at: [126, 104], label: [132, 20] },
  ],
  ankle: [
    { name: 'forefoot', at: [180, 111], label: [206, 56] },
    { name: 'ankle', at: [76, 88], label: [150, 42] },
    { name: 'shin', at: [79, 24], label: [134, 18] },
  ],
};

/** Where the stickers go and where the camera stands. Drawn for a foot whose toes point to the right; the other is its mirror image. */
export function StickerPlan({ joint, side }: { readonly joint: StickerJoint; readonly side: Side }) {
  const words = useStickerWords();
  // The toe's stickers are on the inner side; the ankle's on the outer one, where the leg is nearest the camera.
  const mirrored = joint === 'toe' ? toesSeenFromInside(side) === 'left' : side === 'left';
  const x = (right: number) => (mirrored ? WIDTH - right : right);
  return (
    <svg className="sticker-plan" viewBox={`0 0 ${WIDTH} 216`} role="img" aria-label={words.drawing[joint]}>
      <path className="sticker-plan-view" d="M130 182 20 140h220z" />
      <g transform={mirrored ? `matrix(-1 0 0 1 ${WIDTH} 0)` : undefined}>
        <path className="sticker-plan-floor" d="M12 139h236" />
        <path
          className="sticker-plan-foot"
          d="M57 6c3 36-2 60-10 82-8 20-12 48 8 49h38c16-1 22-8 40-8 18 0 22 8 42 8h52c15 0 18-20 3-24-18-5-28-4-42-10-20-9-34-16-52-26-22-13-34-28-36-52l-1-19z"
        />
        <path className="sticker-plan-toe" d="M176 130c16 3 30 2 46-1" />
      </g>
      {PLACES[joint].map(({ name, at, label }) => (
        <g key={name}>
          <path className="sticker-plan-line" d={`M${x(at[0])} ${at[1]}L${x(label[0])} ${label[1] + 5}`} />
          <circle className="sticker-plan-dot" cx={x(at[0])} cy={at[1]} r="7" />
          <text x={x(label[0])} y={label[1]} textAnchor="middle">
            {words.names[name]}
          </text>
        </g>
      ))}
      <g className="sticker-plan-camera">
        <rect x="113" y="184" width="34" height="22" rx="4" />
        <path d="M122 184l3-7h10l3 7z" />
      </g>
      <text x="160" y="201">
        {words.distance[joint]}
      </text>
    </svg>
  );
}
