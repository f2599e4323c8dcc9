import './own-scripts.ts';
import { type Remote, releaseProxy, wrap } from 'comlink';
import { guardWorker, WorkerLost } from './worker-guard.ts';

/** What a service must have to be hosted: a method that says that it is there. */
export interface Hostable {
  here(): true;
}

/** A service, and how to end it. */
export interface HostedService<S extends Hostable> {
  /** All its methods, asked from here. They reject with `WorkerLost` when the worker dies or falls silent. */
  readonly service: Remote<S>;
  /** `page`: this browser has no worker for it, so it runs on the page's own thread, which stands still meanwhile. */
  readonly where: 'worker' | 'page';
  readonly end: () => void;
}

type Method = (...given: readonly unknown[]) => unknown;

/** A stand-in whose every method goes through `ask`. */
const through = <S extends Hostable>(ask: (name: string, given: readonly unknown[]) => Promise<unknown>): Remote<S> =>
  new Proxy(
    {},
    {
      // Not to be taken for a promise.
      get: (_, name) =>
        name === 'then' || typeof name === 'symbol' ? undefined : (...given: readonly unknown[]) => ask(name, given),
    },
  ) as Remote<S>;

const methodOf = (service: unknown, name: string): Method => {
  const method = (service as Readonly<Record<string, Method | undefined>>)[name];
  if (!method) throw new Error(`methodOf requires a method of the service, got ${name}`);
  return method.bind(service);
};

/** Lets the page paint and hear between two pictures. */
const breathe = () => new Promise((resolve) => setTimeout(resolve));

async function onThisPage<S extends Hostable>(load: () => Promise<S>): Promise<HostedService<S>> {
  const own = await load();
  const service = through<S>(async (name, given) => {
    await breathe();
    return methodOf(own, name)(...given);
  });
  return { service, where: 'page', end: () => undefined };
}

/**
 * A service in a worker of its own or, where the browser has no module workers or gives them nothing to draw on, on the page's thread.
 * @param start the worker that exposes the service
 * @param load the service itself, fetched only where it is needed
 * @param patient names of methods that may take any time
 */
export async function hostedService<S extends Hostable>(
  start: () => Worker,
  load: () => Promise<S>,
  patient: readonly string[] = [],
): Promise<HostedService<S>> {
  if (typeof Worker === 'undefined' || typeof OffscreenCanvas === 'undefined') return onThisPage(load);
  let worker: Worker;
  try {
    worker = start();
  } catch {
    return onThisPage(load);
  }
  const guard = guardWorker(worker);
  const remote = wrap<S>(worker);
  const end = () => {
    guard.stop();
    remote[releaseProxy]();
    worker.terminate();
  };
  const service = through<S>((name, given) => {
    // Comlink's own stand-ins are functions all the way down, and bind to nothing.
    const method = (remote as unknown as Readonly<Record<string, (...g: readonly unknown[]) => Promise<unknown>>>)[name];
    if (!method) throw new Error(`hostedService requires a method of the service, got ${name}`);
    return guard.ask(method(...given), patient.includes(name));
  });
  try {
    // A browser without module workers fails on the script's first line.
    await (service as unknown as { readonly here: () => Promise<true> }).here();
  } catch (cause) {
    if (!(cause instanceof WorkerLost)) throw cause;
    end();
    return onThisPage(load);
  }
  return { service, where: 'worker', end };
}
