import { expose } from 'comlink';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { hostedService } from '../../src/run/hosted-service.ts';

class Adder {
  here(): true {
    return true;
  }
  add(a: number, b: number): number {
    return a + b;
  }
  never(): Promise<number> {
    return new Promise(() => undefined);
  }
}

/** A worker as the page sees it, with the service behind it, or none that answers. */
function fakeWorker(answers: boolean) {
  const { port1, port2 } = new MessageChannel();
  if (answers) expose(new Adder(), port2 as unknown as Parameters<typeof expose>[1]);
  const worker = Object.assign(new EventTarget(), {
    ended: 0,
    terminate() {
      this.ended += 1;
      port1.close();
      port2.close();
    },
    postMessage: (message: unknown, rest: Transferable[]) => port1.postMessage(message, rest ?? []),
    crash: () => worker.dispatchEvent(new Event('error')),
  });
  port1.addEventListener('message', ({ data }) => worker.dispatchEvent(new MessageEvent('message', { data })));
  port1.start();
  return worker;
}

const started = (worker: ReturnType<typeof fakeWorker>) =>
  hostedService(
    () => worker as unknown as Worker,
    async () => new Adder(),
  );

beforeEach(() => {
  vi.stubGlobal('Worker', class {});
  vi.stubGlobal('OffscreenCanvas', class {});
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

describe('a service', () => {
  test('runs in its worker, and is ended with it', async () => {
    const worker = fakeWorker(true);
    const { service, where, end } = await started(worker);
    expect(where).toBe('worker');
    expect(await service.add(2, 3)).toBe(5);
    end();
    expect(worker.ended).toBe(1);
  });

  test.each(['Worker', 'OffscreenCanvas'])('runs on the page’s thread without %s', async (missing) => {
    vi.stubGlobal(missing, undefined);
    const start = vi.fn();
    const { service, where } = await hostedService(start, async () => new Adder());
    expect(where).toBe('page');
    expect(await service.add(2, 3)).toBe(5);
    expect(start).not.toHaveBeenCalled();
  });

  test('runs on the page’s thread where the worker’s script is refused, as without module workers', async () => {
    const worker = fakeWorker(false);
    const starting = started(worker);
    worker.crash();
    const { service, where } = await starting;
    expect(where).toBe('page');
    expect(worker.ended).toBe(1);
    expect(await service.add(2, 3)).toBe(5);
  });

  test('whose worker crashes answers no more: not what was asked, and nothing later', async () => {
    const worker = fakeWorker(true);
    const { service, end } = await started(worker);
    const asked = service.never();
    worker.crash();
    await expect(asked).rejects.toMatchObject({ name: 'WorkerLost', why: 'crashed' });
    await expect(service.add(1, 1)).rejects.toMatchObject({ name: 'WorkerLost' });
    end();
  });

  test('whose worker says nothing for half a minute is lost too; one that is asked to take its time is not', async () => {
    const worker = fakeWorker(true);
    const { service, end } = await hostedService(
      () => worker as unknown as Worker,
      async () => new Adder(),
      ['add'],
    );
    vi.useFakeTimers();
    const asked = service.never();
    const rejected = expect(asked).rejects.toMatchObject({ name: 'WorkerLost', why: 'silent' });
    await vi.advanceTimersByTimeAsync(29_000);
    await vi.advanceTimersByTimeAsync(1000);
    await rejected;
    vi.useRealTimers();
    end();
  });
});
