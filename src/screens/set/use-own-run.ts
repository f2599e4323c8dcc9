import { useEffect, useMemo, useRef } from 'react';
import { ms } from '../../units.ts';
import type { AppServices } from '../services.ts';
import { useWords } from '../words/words-context.tsx';
import { createRun, type Run } from './run.ts';
import type { Sounds } from './sounds.ts';

/** A run of one's own over some services, in the language of the moment. Whoever leaves the screen leaves the set that runs. */
export function useOwnRun(services: AppServices, sounds: Sounds): Run {
  const words = useWords();
  const spoken = useRef(words);
  spoken.current = words;
  const run = useMemo(
    () =>
      createRun({
        services,
        words: () => spoken.current,
        sounds,
        now: () => ms(performance.now()),
        onFault: (cause) => reportError(cause),
      }),
    [services, sounds],
  );
  useEffect(() => () => run.leave(), [run]);
  return run;
}
