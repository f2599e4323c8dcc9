import type { ReactNode } from 'react';
import type { Posture } from '../../pose/head-up.ts';
import type { Side } from '../../pose/landmarks.ts';
import { useWords } from '../words/words-context.tsx';
import './camera-plan.css';

const SEATED = (
  <>
    <rect className="plan-thing" x="72" y="22" width="42" height="42" rx="4" />
    <path className="plan-far" d="M98 32h38" />
    <path className="plan-near" d="M98 54h38" />
    <ellipse className="plan-body" cx="92" cy="43" rx="12" ry="22" />
    <circle className="plan-head" cx="94" cy="43" r="9" />
  </>
);

const LYING = (
  <>
    <rect className="plan-thing" x="32" y="16" width="136" height="54" rx="6" />
    <path className="plan-far" d="M104 36h54" />
    <path className="plan-near" d="M104 52h54" />
    <rect className="plan-body" x="62" y="25" width="46" height="36" rx="14" />
    <circle className="plan-head" cx="49" cy="43" r="10" />
  </>
);

const STANDING = (
  <>
    <rect className="plan-thing" x="132" y="24" width="10" height="40" rx="3" />
    <path className="plan-far" d="M96 34h24" />
    <path className="plan-near" d="M96 54h24" />
    <ellipse className="plan-body" cx="96" cy="43" rx="11" ry="22" />
    <circle className="plan-head" cx="98" cy="43" r="9" />
  </>
);

const PERSON: Readonly<Record<Posture, ReactNode>> = { upright: SEATED, lying: LYING, standing: STANDING };

/** Where the camera stands, seen from above, the near leg dark. Drawn for the right leg; the left is its mirror image. */
export function CameraPlan({ posture, side }: { readonly posture: Posture; readonly side: Side }) {
  const { choose } = useWords();
  return (
    <svg className="camera-plan" viewBox="0 0 200 168" role="img" aria-label={choose.cameraDrawing[posture]}>
      <path className="plan-view" d="M100 142 22 8h156z" />
      <g transform={side === 'left' ? 'matrix(-1 0 0 1 200 0)' : undefined}>{PERSON[posture]}</g>
      <path className="plan-line" d="M100 76v52m-5-6 5 6 5-6m-10-40 5-6 5 6" />
      <g className="plan-camera">
        <rect x="84" y="140" width="32" height="20" rx="4" />
        <path d="M93 140l3-7h8l3 7z" />
      </g>
      <text x="128" y="112">
        {choose.distance[posture]}
      </text>
    </svg>
  );
}
