import type { ReactNode } from 'react';
import type { PrescribedExerciseId } from '../../dose/prescribed-exercise.ts';
import type { Side } from '../../pose/landmarks.ts';
import './exercise-drawing.css';

/** Seen from the person's right side, or from the inner side of the left foot; the other one is the mirror image. */
const SEATED: ReactNode = (
  <>
    <path className="floor" d="M8 112h144" />
    <path className="chair" d="M34 80h40M40 80v32M68 80v32" />
    <circle className="head" cx="57" cy="17" r="9.5" />
    <path className="body" d="M56 36 58 70" />
    <path className="arm" d="M56 42 66 58 80 64" />
  </>
);

const DRAWN: Record<PrescribedExerciseId, ReactNode> = {
  'nerve-glide': (
    <>
      <path className="floor" d="M4 108h152" />
      <path className="mat" d="M10 104h142" />
      <circle className="head before" cx="20" cy="92" r="9.5" />
      <circle className="head" cx="25" cy="78" r="9.5" />
      <path className="body" d="M37 93 82 95" />
      <path className="arm" d="M42 91 62 70 98 58" />
      <path className="leg" d="M82 95 116 44" />
      <path className="foot before" d="M117 42 106 34" />
      <path className="foot" d="M117 42 127 31" />
      <path className="move" d="M108 26a18 18 0 0 1 14-3" />
      <path className="move" d="m117 17 6 6-6 7" />
      <path className="move" d="M6 84a20 20 0 0 1 5-14" />
      <path className="move" d="m4 72 8-3 3 8" />
    </>
  ),
  'toe-lift': (
    <>
      <path className="floor" d="M8 100h144" />
      <path className="leg" d="M42 24 46 84" />
      <path className="foot" d="M44 92 104 92" />
      <path className="foot before" d="M106 94h22" />
      <path className="foot" d="M106 91 124 76" />
      <path className="move" d="M136 92a26 26 0 0 0-4-20" />
      <path className="move" d="m138 77-6-6-6 6" />
    </>
  ),
  'foot-tap': (
    <>
      {SEATED}
      <path className="leg" d="M58 71 98 69 99 103" />
      <path className="foot before" d="M98 108h22" />
      <path className="foot" d="M98 107 116 93" />
      <path className="move" d="M129 105a31 31 0 0 0-4-20" />
      <path className="move" d="m131 91-6-7-6 6" />
    </>
  ),
  'knee-straighten': (
    <>
      {SEATED}
      <path className="leg before" d="M98 69 99 103M98 107h18" />
      <path className="leg" d="M58 71 98 69 131 77" />
      <path className="foot" d="M133 80 139 62" />
      <path className="move" d="M118 107a39 39 0 0 0 16-15" />
      <path className="move" d="m126 91 8 1 1 8" />
    </>
  ),
  'heel-stand': (
    <>
      <path className="floor" d="M8 112h144" />
      <path className="chair" d="M104 50h16M112 50v62" />
      <circle className="head" cx="66" cy="14" r="9.5" />
      <path className="body" d="M64 31 63 62" />
      <path className="arm" d="M64 37 82 46 106 48" />
      <path className="leg" d="M63 62 64 84 63 104" />
      <path className="foot before" d="M62 110h24" />
      <path className="foot" d="M62 109 82 97" />
      <path className="move" d="M93 108a31 31 0 0 0-3-17" />
      <path className="move" d="m97 96-7-6-5 7" />
    </>
  ),
  'leg-raise': (
    <>
      <path className="floor" d="M4 108h152" />
      <path className="mat" d="M10 104h142" />
      <circle className="head" cx="20" cy="89" r="9.5" />
      <path className="body" d="M37 95 82 95" />
      <path className="arm" d="M40 93 58 98 74 97" />
      <path className="leg before" d="M82 95h62M147 94V82" />
      <path className="leg" d="M82 95 121 47" />
      <path className="foot" d="M124 45 114 36" />
      <path className="move" d="M146 70a68 68 0 0 0-13-22" />
      <path className="move" d="m142 49-9-2-1 9" />
    </>
  ),
};

/** The camera sees a big toe from the foot's inner side, all else from the leg's outer one. */
const isMirrored = (exercise: PrescribedExerciseId, side: Side): boolean => (exercise === 'toe-lift') === (side === 'right');

/** A line drawing of the movement as the camera sees it: before pale, at its end dark. Decoration; its name stands beside it. */
export function ExerciseDrawing({ exercise, side }: { readonly exercise: PrescribedExerciseId; readonly side: Side }) {
  return (
    <svg className="exercise-drawing" viewBox="0 0 160 120" aria-hidden="true">
      <g transform={isMirrored(exercise, side) ? 'matrix(-1 0 0 1 160 0)' : undefined}>{DRAWN[exercise]}</g>
    </svg>
  );
}
