import { useEffect } from 'react';
import type { Run } from './run.ts';

/** Whether an element has its own use for the space bar. */
const takesSpace = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement &&
  target.matches('button, input, select, textarea, a, summary') &&
  !target.matches('[data-look="stop"], .set-onset');

/** From anywhere on the screen the space bar gives the announced signal, and Escape stops. */
export function useSetKeys(active: boolean, { signal, stop }: Pick<Run, 'signal' | 'stop'>): void {
  useEffect(() => {
    if (!active) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.repeat) return;
      if (event.key !== 'Escape' && (event.key !== ' ' || takesSpace(event.target))) return;
      event.preventDefault();
      if (event.key === 'Escape') stop();
      else signal();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [active, signal, stop]);
}
