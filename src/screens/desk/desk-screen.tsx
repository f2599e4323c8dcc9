import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { ms } from '../../units.ts';
import { usePerson } from '../people/person-context.tsx';
import { useServices } from '../services-context.tsx';
import { createRun } from '../set/run.ts';
import { RunContext } from '../set/run-context.tsx';
import type { Sounds } from '../set/sounds.ts';
import { useWords } from '../words/words-context.tsx';
import { Desk } from './desk.tsx';
import type { DeskChoice } from './desk-choice.ts';

/** The person on the call hears the therapist, not this page. */
const SILENT: Sounds = { unlock: () => undefined, say: () => undefined, play: () => undefined, hush: () => undefined };

const FIRST: DeskChoice = {
  exercise: 'leg-raise',
  side: 'left',
  source: 'window',
  shared: null,
  crop: null,
  film: null,
  photo: null,
};

/** The therapist measures a person who is on a call, in the room, in a film or in a photo. Leaving the screen lets the shared window go. */
export function DeskScreen() {
  const services = useServices();
  const words = useWords();
  const affected = usePerson()?.person.affectedSide;
  // The affected leg first, where one is known.
  const [choice, setChoice] = useState({ ...FIRST, side: affected === 'right' ? affected : FIRST.side });
  const change = useCallback((part: Partial<DeskChoice>) => setChoice((before) => ({ ...before, ...part })), []);
  const spoken = useRef(words);
  spoken.current = words;
  const run = useMemo(
    () =>
      createRun({
        services,
        words: () => spoken.current,
        sounds: SILENT,
        now: () => ms(performance.now()),
        onFault: (cause) => reportError(cause),
      }),
    [services],
  );
  const shared = useRef(choice.shared);
  shared.current = choice.shared;
  useEffect(
    () => () => {
      run.leave();
      shared.current?.stop();
    },
    [run],
  );
  return (
    <RunContext value={run}>
      <Desk choice={choice} onChoice={change} />
    </RunContext>
  );
}
