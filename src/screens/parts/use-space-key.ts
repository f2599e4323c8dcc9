import { useEffect, useRef } from 'react';

/** The space bar from anywhere on the screen; a button or field that has the focus answers it itself. */
export function useSpaceKey(act: () => void): void {
  const latest = useRef(act);
  latest.current = act;
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== ' ' || event.repeat || (event.target instanceof HTMLElement && event.target.matches('button, input')))
        return;
      event.preventDefault();
      latest.current();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
