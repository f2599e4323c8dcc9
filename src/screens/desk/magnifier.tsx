import { useEffect, useRef } from 'react';
import type { PictureSize } from '../../capture/frame.ts';
import type { PicturePoint } from '../../measure/live-view.ts';
import type { StillImage } from './still-image.ts';

/** Its own pixels, and which share of the picture's longer side they show. Chosen: a joint with what is around it. */
const OWN_PX = 240;
const SHOWN = 0.07;

interface MagnifierProps {
  readonly image: StillImage;
  readonly size: PictureSize;
  readonly at: PicturePoint;
  /** On which side of the picture it stands: away from the point. */
  readonly onRight: boolean;
}

/** What lies under a finger, larger, with a cross at the point. */
export function Magnifier({ image, size, at, onRight }: MagnifierProps) {
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    if (!context) return;
    const shown = SHOWN * Math.max(size.width, size.height);
    context.fillStyle = '#000000';
    context.fillRect(0, 0, OWN_PX, OWN_PX);
    context.drawImage(image, at.x - shown / 2, at.y - shown / 2, shown, shown, 0, 0, OWN_PX, OWN_PX);
    for (const [width, colour] of [
      [5, '#101a20'],
      [2, '#ffd23f'],
    ] as const) {
      context.lineWidth = width;
      context.strokeStyle = colour;
      context.beginPath();
      context.moveTo(OWN_PX / 2, OWN_PX * 0.3);
      context.lineTo(OWN_PX / 2, OWN_PX * 0.7);
      context.moveTo(OWN_PX * 0.3, OWN_PX / 2);
      context.lineTo(OWN_PX * 0.7, OWN_PX / 2);
      context.stroke();
    }
  }, [image, size, at]);
  return <canvas ref={canvas} className="magnifier" data-side={onRight ? 'right' : 'left'} width={OWN_PX} height={OWN_PX} />;
}
