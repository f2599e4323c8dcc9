import { vi } from 'vitest';

/** Gives every canvas a context that writes down the texts it is given; jsdom has none. @returns what is written */
export function fakeCanvas(): readonly string[] {
  const written: string[] = [];
  const context = new Proxy(
    {},
    {
      get: (_target, name) => {
        if (name === 'fillText') return (text: string) => written.push(text);
        if (name === 'measureText') return () => ({ width: 10 });
        if (name === 'canvas') return document.createElement('canvas');
        return () => undefined;
      },
      set: () => true,
    },
  );
  vi.spyOn(HTMLCanvasElement.prototype, 'getContext').mockImplementation(() => context as never);
  return written;
}
