import { useEffect, useRef, useState } from 'react';
import { KNEE_LIMIT_DEG } from '../../measure/knee-limit.ts';
import type { LegDrawing } from '../../measure/live-view.ts';
import type { SetResult } from '../../measure/set-result.ts';
import type { Ms } from '../../units.ts';
import { useChoices } from '../choose/choices.ts';
import type { Pictures, Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useRun, useRunState } from '../set/run-context.tsx';
import type { DeskTask } from './desk-choice.ts';
import { type Film, framesOf, watchLegs } from './film.ts';
import { type Mark, measuredMarks, type WaitingMark } from './marks.ts';

/** A recording at the desk, live or of a whole film, and what becomes of it. */
export interface Recording {
  readonly running: boolean;
  /** Why the last one came to nothing; null: it did not. */
  readonly problem: Problem | null;
  /** The film that was measured and is looked at now. */
  readonly film: Film | null;
  readonly closeFilm: () => void;
  readonly start: (pictures: Pictures) => void;
  /** A mark in the live recording: its angle comes with the end of it. */
  readonly wait: (mark: WaitingMark | Mark) => void;
}

/** Runs recordings. What was measured is taken out of the page's memory as soon as marks and film have it; nothing is stored. */
export function useRecording(task: DeskTask, onMarks: (marks: readonly Mark[]) => void): Recording {
  const services = useServices();
  const run = useRun();
  const model = useChoices((s) => s.choices.model);
  const plan = useRunState((s) => s.plan);
  const finishedId = useRunState((s) => s.finishedId);
  const problem = useRunState((s) => s.problem);
  const [film, setFilm] = useState<Film | null>(null);
  const [lost, setLost] = useState<Problem | null>(null);
  const waiting = useRef<readonly (WaitingMark | Mark)[]>([]);
  const legs = useRef(new Map<Ms, LegDrawing | null>());
  const told = useRef(onMarks);
  told.current = onMarks;
  useEffect(() => watchLegs(run, legs.current), [run]);
  useEffect(() => {
    if (finishedId === null && problem === null) return;
    const { plan: ended, opened } = run.state.getState();
    const keep = (result: SetResult | null) => {
      told.current(measuredMarks(waiting.current, result));
      waiting.current = [];
      const frames = framesOf(legs.current);
      if (ended?.pictures.kind !== 'file' || !opened || frames.length === 0) return;
      const { exercise, side, pictures } = ended;
      setFilm({ exercise, side, file: pictures.file, size: opened.size, frames, result, problem });
    };
    const take = async () => {
      const id = finishedId ?? problem?.keptId ?? null;
      if (id === null) return keep(null);
      const set = await services.set(id);
      if (!set.ok) return setLost(set.error);
      keep(set.value.result);
      await services.remove(id);
    };
    void take();
  }, [finishedId, problem, services, run]);
  return {
    running: plan !== null && finishedId === null && problem === null,
    problem: lost ?? problem,
    film,
    closeFilm: () => {
      setFilm(null);
      run.leave();
    },
    start: (pictures) => {
      waiting.current = [];
      legs.current.clear();
      setLost(null);
      const guide = { target: { kind: 'full' }, holdS: 0, tempoS: null } as const;
      const { exercise, side } = task;
      run.begin({
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
    },
    wait: (mark) => {
      waiting.current = [...waiting.current, mark];
    },
  };
}
