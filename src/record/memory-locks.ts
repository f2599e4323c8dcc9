import type { StorePlatform } from './database.ts';

interface Turn {
  readonly mode: LockMode;
  readonly go: () => void;
}

/** Web Locks for a database that one page alone has: exclusive or shared, at once or waiting in their order, until a signal. */
export function memoryLocks(): StorePlatform['locks'] {
  const held = new Map<string, LockMode[]>();
  const waiting = new Map<string, Turn[]>();

  const isFree = (name: string, mode: LockMode): boolean => {
    const modes = held.get(name) ?? [];
    return modes.length === 0 || (mode === 'shared' && modes.every((each) => each === 'shared'));
  };
  const next = (name: string) => {
    const [first] = waiting.get(name) ?? [];
    if (first && isFree(name, first.mode)) first.go();
  };
  const turnOf = (name: string, mode: LockMode, signal: AbortSignal | undefined): Promise<void> =>
    new Promise((resolve, reject) => {
      const queue = waiting.get(name) ?? [];
      waiting.set(name, queue);
      const leave = () => queue.splice(queue.indexOf(turn), 1);
      const turn: Turn = {
        mode,
        go: () => {
          leave();
          held.set(name, [...(held.get(name) ?? []), mode]);
          resolve();
          next(name);
        },
      };
      queue.push(turn);
      signal?.addEventListener('abort', () => {
        if (queue.includes(turn)) leave();
        reject(signal.reason);
        next(name);
      });
      next(name);
    });
  const request = async (name: string, options: LockOptions, body: LockGrantedCallback<unknown>): Promise<unknown> => {
    const { mode = 'exclusive', ifAvailable, signal } = options;
    if (ifAvailable && (!isFree(name, mode) || (waiting.get(name) ?? []).length > 0)) return body(null);
    await turnOf(name, mode, signal);
    try {
      return await body({ name, mode });
    } finally {
      const modes = held.get(name) ?? [];
      modes.splice(modes.indexOf(mode), 1);
      held.set(name, modes);
      next(name);
    }
  };
  return { request } as StorePlatform['locks'];
}
