/** Thrown by every question to a worker that has crashed, or that says nothing any more. */
export class WorkerLost extends Error {
  override readonly name = 'WorkerLost';
  readonly why: 'crashed' | 'silent';
  constructor(why: 'crashed' | 'silent', detail: string) {
    super(`the worker was lost: ${why}${detail && ` (${detail})`}`);
    this.why = why;
  }
}

/** Watches over the questions to one worker: without it an answer that never comes would be waited for forever. */
export interface WorkerGuard {
  /** The answer. @param patient for as long as it takes; a crash is heard of all the same. @throws WorkerLost */
  readonly ask: <T>(answer: Promise<T>, patient?: boolean) => Promise<T>;
  readonly stop: () => void;
}

/** An answer that takes so many seconds will not come. Chosen: twice what a graphics card's first picture takes on the slowest machine. */
const SILENT_S = 30;
const TICK_MS = 1000;

/** @param worker fires `error` when its script fails or it runs out of memory */
export function guardWorker(worker: Pick<Worker, 'addEventListener' | 'removeEventListener'>): WorkerGuard {
  let lost: WorkerLost | null = null;
  const waiting = new Set<(cause: WorkerLost) => void>();
  const lose = (cause: WorkerLost) => {
    lost ??= cause;
    for (const reject of [...waiting]) reject(cause);
    waiting.clear();
  };
  const crashed = (event: Event) => lose(new WorkerLost('crashed', 'message' in event ? String(event.message) : ''));
  worker.addEventListener('error', crashed);
  worker.addEventListener('messageerror', crashed);
  return {
    async ask(answer, patient = false) {
      // Heard of here or nowhere.
      answer.catch(() => undefined);
      if (lost) throw lost;
      let reject: (cause: WorkerLost) => void = () => undefined;
      const breaks = new Promise<never>((_, no) => {
        reject = no;
      });
      waiting.add(reject);
      // Counted in ticks, of which a machine that sleeps has at most one.
      let left = SILENT_S;
      const timer = patient
        ? undefined
        : setInterval(() => {
            left -= 1;
            if (left === 0) lose(new WorkerLost('silent', `${SILENT_S} s`));
          }, TICK_MS);
      try {
        return await Promise.race([answer, breaks]);
      } finally {
        clearInterval(timer);
        waiting.delete(reject);
      }
    },
    stop() {
      worker.removeEventListener('error', crashed);
      worker.removeEventListener('messageerror', crashed);
      lose(new WorkerLost('crashed', 'ended'));
    },
  };
}
