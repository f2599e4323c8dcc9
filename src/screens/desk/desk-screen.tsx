import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { KNEE_LIMIT_DEG } from '../../measure/finish.ts';
import { ms } from '../../units.ts';
import { useChoices } from '../choose/choices.ts';
import { Page } from '../parts/page.tsx';
import type { Pictures, Problem, SetPlan } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { createRun } from '../set/run.ts';
import { RunContext, useRunState } from '../set/run-context.tsx';
import type { Sounds } from '../set/sounds.ts';
import { useWords } from '../words/words-context.tsx';
import { DeskLive } from './desk-live.tsx';
import { DeskResults } from './desk-results.tsx';
import './desk-screen.css';
import type { DeskChoice } from './desk-choice.ts';
import { DeskSetup } from './desk-setup.tsx';
import { type LiveMark, type Mark, measuredMarks } from './marks.ts';

/** The person on the call hears the therapist, not this page. */
const SILENT: Sounds = { unlock: () => undefined, say: () => undefined, play: () => undefined, hush: () => undefined };

const FIRST: DeskChoice = { exercise: 'leg-raise', side: 'left', source: 'window', shared: null, crop: null };

interface DeskProps {
  readonly choice: DeskChoice;
  readonly onChoice: (part: Partial<DeskChoice>) => void;
  readonly begin: (plan: SetPlan) => void;
}

/** Setting up, measuring, and what was marked so far. */
function Desk({ choice, onChoice, begin }: DeskProps) {
  const { desk } = useWords();
  const services = useServices();
  const model = useChoices((s) => s.choices.model);
  const plan = useRunState((s) => s.plan);
  const finishedId = useRunState((s) => s.finishedId);
  const problem = useRunState((s) => s.problem);
  const [live, setLive] = useState<readonly LiveMark[]>([]);
  const [marks, setMarks] = useState<readonly Mark[]>([]);
  const [lost, setLost] = useState<Problem | null>(null);
  const marking = useRef<readonly LiveMark[]>([]);
  marking.current = live;
  useEffect(() => {
    const id = finishedId ?? problem?.keptId ?? null;
    if (id === null) return;
    const take = async () => {
      const set = await services.set(id);
      if (!set.ok) return setLost(set.error);
      const { result, exercise } = set.value;
      if (result && exercise !== 'own') setMarks((before) => [...before, ...measuredMarks(marking.current, exercise, result)]);
      setLive([]);
      await services.remove(id);
    };
    void take();
  }, [finishedId, problem, services]);
  const start = (pictures: Pictures) => {
    setLive([]);
    setLost(null);
    const { exercise, side } = choice;
    const guide = { target: { kind: 'full' }, holdS: 0, tempoS: null } as const;
    begin({
      pictures,
      exercise,
      side,
      targetReps: null,
      model,
      head: 'find',
      kneeLimitDeg: KNEE_LIMIT_DEG,
      guide,
      stored: false,
    });
  };
  const running = plan !== null && finishedId === null && problem === null;
  return (
    <Page className="desk" title={desk.title} lead={running ? undefined : desk.lead} back="/">
      {running ? (
        <DeskLive plan={plan} marks={live} onMark={(mark) => setLive((before) => [...before, mark])} />
      ) : (
        <div className="desk-parts">
          {marks.length > 0 ? <DeskResults marks={marks} exercise={choice.exercise} onForget={() => setMarks([])} /> : null}
          <DeskSetup choice={choice} problem={lost ?? problem} onChoice={onChoice} onStart={start} />
        </div>
      )}
    </Page>
  );
}

/** The therapist measures a person who is on a call or in the room. Leaving the screen lets the shared window go. */
export function DeskScreen() {
  const services = useServices();
  const words = useWords();
  const [choice, setChoice] = useState(FIRST);
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
      <Desk choice={choice} onChoice={change} begin={run.begin} />
    </RunContext>
  );
}
