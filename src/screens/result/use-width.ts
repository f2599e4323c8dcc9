import { type RefObject, useEffect, useRef, useState } from 'react';

/** Width of an element in px, followed as it changes; `first` until it is known. */
export function useWidth<T extends Element>(first: number): { readonly ref: RefObject<T | null>; readonly width: number } {
  const ref = useRef<T>(null);
  const [width, setWidth] = useState(first);
  useEffect(() => {
    const element = ref.current;
    if (!element || typeof ResizeObserver === 'undefined') return;
    const observer = new ResizeObserver(([entry]) => {
      if (entry) setWidth(Math.max(1, Math.round(entry.contentRect.width)));
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, width };
}
