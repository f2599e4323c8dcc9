import { useEffect, useRef } from 'react';
import { ExerciseDrawing } from '../choose/exercise-drawing.tsx';
import type { SetPlan } from '../services.ts';
import { useWords } from '../words/words-context.tsx';
import { CameraPreview } from './camera-preview.tsx';
import { drawFrame } from './draw-frame.ts';
import { drawLeg } from './draw-leg.ts';
import './picture.css';
import { useRun, useRunState } from './run-context.tsx';

/** The picture being measured, and over it the leg with its angle. Painted outside of React, frame by frame. */
export function Picture({ plan }: { readonly plan: SetPlan }) {
  const { exercise, side, pictures } = plan;
  const { set, locale } = useWords();
  const run = useRun();
  const size = useRunState((s) => s.opened?.size ?? null);
  const stage = useRunState((s) => s.stage);
  const preview = useRunState((s) => s.opened?.preview ?? null);
  const picture = useRef<HTMLCanvasElement>(null);
  const overlay = useRef<HTMLCanvasElement>(null);

  useEffect(() => {
    const canvas = picture.current;
    if (!canvas) return;
    return run.paintWith((frame) => drawFrame(canvas, frame));
  }, [run]);

  useEffect(() => {
    const canvas = overlay.current;
    if (!canvas || !size) return;
    const style = getComputedStyle(canvas);
    const colours = { line: style.getPropertyValue('--leg').trim(), edge: style.getPropertyValue('--leg-edge').trim() };
    const whole = new Intl.NumberFormat(locale, { maximumFractionDigits: 0 });
    const paint = () => {
      const { leg, angleDeg } = run.moment.getState();
      // Adding zero writes a rounded -0 as 0.
      const angle = angleDeg === null ? null : `${whole.format(Math.round(angleDeg) + 0).replace('-', '−')}°`;
      drawLeg(canvas, size, leg, { exercise, angle }, colours);
    };
    paint();
    // A new frame's time is no new leg.
    return run.moment.subscribe((now, before) => {
      if (now.leg !== before.leg || now.angleDeg !== before.angleDeg) paint();
    });
  }, [run, size, exercise, locale]);

  return (
    <div className="picture">
      <canvas ref={picture} role="img" aria-label={set.picture} width={size?.width ?? 640} height={size?.height ?? 480} />
      <canvas ref={overlay} />
      {stage === 'opening' && preview ? <CameraPreview stream={preview} /> : null}
      {stage === 'opening' && !preview ? (
        <div className="picture-before">
          <ExerciseDrawing exercise={exercise} side={side} />
        </div>
      ) : null}
      {pictures.kind === 'camera' && size && stage !== 'ended' ? (
        <p className="picture-camera-on">
          <span aria-hidden="true" />
          {set.cameraOn}
        </p>
      ) : null}
    </div>
  );
}
