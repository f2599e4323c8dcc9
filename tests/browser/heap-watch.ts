import type { CDPSession, Page } from 'playwright-core';

/** What a page or a worker holds after a full collection, MB: its objects, and the buffers behind them (pictures, the model's memory). */
export interface Held {
  readonly objectsMb: number;
  readonly buffersMb: number;
}

/** The heaps of a page and of the workers it has started. */
export interface HeapWatch {
  readonly page: () => Promise<Held>;
  /** Null: no worker whose address contains `name` is running. */
  readonly worker: (name: string) => Promise<Held | null>;
}

interface Usage {
  readonly usedSize: number;
  readonly backingStorageSize?: number;
}

type Ask = (method: string) => Promise<unknown>;

const MB = 1024 * 1024;

async function heldBy(ask: Ask): Promise<Held> {
  // Twice: what the first collection lets go may hold others.
  await ask('HeapProfiler.collectGarbage');
  await ask('HeapProfiler.collectGarbage');
  const { usedSize, backingStorageSize = 0 } = (await ask('Runtime.getHeapUsage')) as Usage;
  return { objectsMb: usedSize / MB, buffersMb: backingStorageSize / MB };
}

/** Speaks with a worker through the page's session: the driver has no sessions of workers. */
function askWorker(session: CDPSession, sessionId: string): Ask {
  let last = 0;
  return (method) =>
    new Promise((resolve, reject) => {
      last += 1;
      const id = last;
      const hear = (heard: { readonly sessionId: string; readonly message: string }) => {
        if (heard.sessionId !== sessionId) return;
        const answer = JSON.parse(heard.message) as { readonly id?: number; readonly result?: unknown };
        if (answer.id !== id) return;
        session.off('Target.receivedMessageFromTarget', hear);
        resolve(answer.result);
      };
      session.on('Target.receivedMessageFromTarget', hear);
      session.send('Target.sendMessageToTarget', { sessionId, message: JSON.stringify({ id, method }) }).catch(reject);
    });
}

/** To be called before the page starts the workers that are to be watched. */
export async function watchHeaps(page: Page): Promise<HeapWatch> {
  const session = await page.context().newCDPSession(page);
  const workers: { readonly url: string; readonly sessionId: string }[] = [];
  session.on('Target.attachedToTarget', ({ sessionId, targetInfo }) => workers.push({ sessionId, url: targetInfo.url }));
  session.on('Target.detachedFromTarget', ({ sessionId }) => {
    const at = workers.findIndex((each) => each.sessionId === sessionId);
    if (at >= 0) workers.splice(at, 1);
  });
  await session.send('Target.setAutoAttach', { autoAttach: true, waitForDebuggerOnStart: false, flatten: false });
  return {
    page: () => heldBy((method) => session.send(method as 'HeapProfiler.collectGarbage')),
    async worker(name) {
      const found = workers.find(({ url }) => url.includes(name));
      return found ? heldBy(askWorker(session, found.sessionId)) : null;
    },
  };
}
