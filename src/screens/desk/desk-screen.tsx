import { useCallback, useEffect, useRef, useState } from 'react';
import { usePerson } from '../people/person-context.tsx';
import { useServices } from '../services-context.tsx';
import { RunContext } from '../set/run-context.tsx';
import type { Sounds } from '../set/sounds.ts';
import { useOwnRun } from '../set/use-own-run.ts';
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
  const affected = usePerson()?.person.affectedSide;
  // The affected leg first, where one is known.
  const [choice, setChoice] = useState({ ...FIRST, side: affected === 'right' ? affected : FIRST.side });
  const change = useCallback((part: Partial<DeskChoice>) => setChoice((before) => ({ ...before, ...part })), []);
  const run = useOwnRun(services, SILENT);
  const shared = useRef(choice.shared);
  shared.current = choice.shared;
  useEffect(() => () => shared.current?.stop(), []);
  return (
    <RunContext value={run}>
      <Desk choice={choice} onChoice={change} />
    </RunContext>
  );
}
