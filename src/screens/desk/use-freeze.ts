import { useEffect, useRef, useState } from 'react';
import type { LegDrawing } from '../../measure/live-view.ts';
import type { Deg, Ms } from '../../units.ts';
import { useRun } from '../set/run-context.tsx';

/** A moment of a live picture that stands still, while the recording goes on. */
export interface FrozenMoment {
  readonly image: HTMLCanvasElement;
  readonly tMs: Ms;
  readonly leg: LegDrawing | null;
  /** The live angle from rest; null: not known then. */
  readonly liveDeg: Deg | null;
}

/** So long is waited for the leg to be found in a picture, before one is frozen without it. Chosen: longer than the slowest model takes. */
const WAIT_MS = 1000;

/**
 * Freezes the live picture.
 * @param canvas where the live picture is painted
 * @param liveDeg the angle from rest at this moment
 */
export function useFreeze(canvas: () => HTMLCanvasElement | null, liveDeg: () => Deg | null) {
  const run = useRun();
  const [frozen, setFrozen] = useState<FrozenMoment | null>(null);
  const cancel = useRef<() => void>(() => undefined);
  useEffect(() => () => cancel.current(), []);
  const freeze = () => {
    cancel.current();
    const take = () => {
      cancel.current();
      const painted = canvas();
      if (!painted) return;
      const image = document.createElement('canvas');
      Object.assign(image, { width: painted.width, height: painted.height });
      image.getContext('2d', { alpha: false })?.drawImage(painted, 0, 0);
      const { tMs, leg } = run.moment.getState();
      setFrozen({ image, tMs, leg, liveDeg: liveDeg() });
    };
    // A picture is painted before the leg is found in it: a leg that was just found is that of the painted picture.
    const end = run.moment.subscribe((now, before) => now.leg && now.leg !== before.leg && take());
    const timer = setTimeout(take, WAIT_MS);
    cancel.current = () => {
      end();
      clearTimeout(timer);
    };
  };
  return { frozen, freeze, thaw: () => setFrozen(null) };
}
