import { useParentSize } from '@visx/responsive';

/** As wide as a chart is until its place is known, px. */
const FIRST_PX = 900;

/** Where nothing is laid out, nothing changes its size. */
class NothingToObserve implements ResizeObserver {
  observe(): void {}
  unobserve(): void {}
  disconnect(): void {}
}

/** A list that is made anew each time would make the size be read anew each time. */
const ONLY_WIDTH: ('top' | 'left' | 'height')[] = ['top', 'left', 'height'];

/** The width of the element that gets `parentRef`, whole px, followed as it changes. */
export function useChartWidth(): { readonly parentRef: (element: HTMLDivElement | null) => void; readonly width: number } {
  const observer = typeof ResizeObserver === 'undefined' ? { resizeObserverPolyfill: NothingToObserve } : {};
  const { parentRef, width } = useParentSize<HTMLDivElement>({
    initialSize: { width: FIRST_PX },
    ignoreDimensions: ONLY_WIDTH,
    // Drawn anew at once: what is late would be drawn over what has been read meanwhile.
    debounceTime: 0,
    ...observer,
  });
  return { parentRef, width: Math.max(1, Math.round(width)) };
}
