import { askedPause, mayPass, pauseBeforeNext } from '../../sync/again-later.ts';
import type { ServerError } from '../../sync/server-error.ts';
import type { AutomaticState, ServerServices } from './server-services.ts';

export interface KeepSendingNeeds {
  readonly services: Pick<ServerServices, 'sendByItself' | 'automatic'>;
  readonly isOnline: () => boolean;
  /** In [0, 1). */
  readonly chance: () => number;
  /** A failure that is a bug. */
  readonly onFault: (error: unknown) => void;
}

export interface KeptSending {
  /** Sends, unless the server asked to be left alone for longer: then once that is over. */
  readonly now: () => void;
  /** The network is gone: nothing is tried until `now`. */
  readonly offline: () => void;
  readonly stop: () => void;
}

/** The trouble of the last attempt, if it may pass by itself. */
export function passingTrouble({ fault }: AutomaticState): ServerError | null {
  return fault?.kind === 'server' && mayPass(fault.error) ? fault.error : null;
}

/**
 * Sends when told to, and after trouble that may pass again by itself, later each time (`sync/again-later.ts`), until all went or the network is gone. One timer at
 * most. While a set runs `sendByItself` does nothing, and the same pause goes by once more.
 */
export function keepSending({ services, isOnline, chance, onFault }: KeepSendingNeeds): KeptSending {
  const { automatic } = services;
  let timer: ReturnType<typeof setTimeout> | undefined;
  let aloneUntilMs = 0;
  let stopped = false;

  const later = (ms: number) => {
    clearTimeout(timer);
    if (!stopped && isOnline()) timer = setTimeout(send, ms);
  };
  const again = (state: AutomaticState) => {
    const error = passingTrouble(state);
    if (error) later(pauseBeforeNext(Math.max(state.failures, 1), error, chance()));
    else clearTimeout(timer);
  };
  // Whoever began the attempt, a screen for instance.
  const unsubscribe = automatic.subscribe((state, before) => {
    if (state.failures > before.failures) {
      const error = passingTrouble(state);
      aloneUntilMs = error ? Date.now() + askedPause(error) : 0;
      again(state);
    } else if (!passingTrouble(state)) clearTimeout(timer);
  });
  let going = false;
  let wanted = false;
  const attempt = async () => {
    const before = automatic.getState();
    await services.sendByItself();
    const after = automatic.getState();
    // Nothing was tried.
    if (after.failures === before.failures) again(after);
    // What was asked for meanwhile goes at once only where there is no trouble to wait for.
    return wanted && !passingTrouble(after);
  };
  function send(): void {
    clearTimeout(timer);
    wanted = going;
    if (going) return;
    going = true;
    attempt()
      .finally(() => {
        going = false;
      })
      .then((more) => more && !stopped && send())
      .catch(onFault);
  }

  return {
    now() {
      const left = aloneUntilMs - Date.now();
      const error = passingTrouble(automatic.getState());
      // Many machines were told the same moment: they do not come back together.
      if (left > 0 && error) later(left + (pauseBeforeNext(1, error, chance()) - askedPause(error)) / 10);
      else send();
    },
    offline: () => clearTimeout(timer),
    stop() {
      stopped = true;
      unsubscribe();
      clearTimeout(timer);
    },
  };
}
