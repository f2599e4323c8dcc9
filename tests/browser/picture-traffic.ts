import type { Asked } from './picture-times.ts';

/** What went to a worker and came back since it was last asked. */
export interface Traffic {
  readonly pictures: readonly Asked[];
  readonly mostOutstanding: number;
  /** The page's clock, and the time of day at its beginning. */
  readonly nowMs: number;
  readonly originMs: number;
}

declare global {
  interface Window {
    takeTraffic: () => Traffic;
  }
}

/** Runs in the page before its own scripts: notes when each picture was sent to its worker, and when it was answered. */
export function watchPictures(): void {
  let pictures: Asked[] = [];
  let mostOutstanding = 0;
  window.takeTraffic = () => {
    const taken = { pictures, mostOutstanding, nowMs: performance.now(), originMs: performance.timeOrigin };
    pictures = [];
    mostOutstanding = 0;
    return taken;
  };
  window.Worker = class extends window.Worker {
    /** Of this worker only: what another one was asked before it was ended is never answered. */
    readonly #asked = new Map<unknown, { readonly tMs: number; readonly askedMs: number }>();
    constructor(url: string | URL, options?: WorkerOptions) {
      super(url, options);
      this.addEventListener('message', ({ data }) => {
        const asked = this.#asked.get(data.id);
        if (!asked) return;
        this.#asked.delete(data.id);
        pictures.push({ ...asked, answeredMs: performance.now() });
      });
    }
    override postMessage(message: unknown, rest?: unknown): void {
      const { id, path, argumentList } = message as { id?: unknown; path?: string[]; argumentList?: { value: unknown }[] };
      if (path?.at(-1) === 'observe') {
        this.#asked.set(id, { tMs: Number(argumentList?.[2]?.value), askedMs: performance.now() });
        mostOutstanding = Math.max(mostOutstanding, this.#asked.size);
      }
      super.postMessage(message, rest as Transferable[]);
    }
  };
}
