import { useEffect } from 'react';

/** Whether an element has its own use for the space bar. */
const takesSpace = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.matches('button, input, select, textarea, a, summary') &&
  !target.matches('[data-look="stop"]');

/** The space bar and Escape stop the set from anywhere on the screen. */
export function useStopKeys(active: boolean, stop: () => void): void {
  useEffect(() => {
    if (!active) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.repeat) return;
      if (event.key !== 'Escape' && (event.key !== ' ' || takesSpace(event.target))) return;
      event.preventDefault();
      stop();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [active, stop]);
}
