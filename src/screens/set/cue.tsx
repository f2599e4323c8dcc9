import { useMemo } from 'react';
import type { SetGuide } from '../services.ts';
import { BeatBar } from './beat-bar.tsx';
import { HoldTimer } from './hold-timer.tsx';
import { useRunState } from './run-context.tsx';
import { usePace } from './use-pace.ts';

function Beating({ tempoS }: { readonly tempoS: number }) {
  const runs = useRunState(({ stage }) => stage === 'ready' || stage === 'counting');
  const pace = usePace(
    useMemo(() => ({ tempoS, holdS: 0 }), [tempoS]),
    runs,
  );
  return <BeatBar pace={pace} />;
}

/** What leads through a repetition: where it is held, the hold as it is measured, else the beat; nothing where neither is asked for. */
export function Cue({ guide: { holdS, tempoS } }: { readonly guide: SetGuide }) {
  if (holdS > 0) return <HoldTimer holdS={holdS} />;
  return tempoS === null ? null : <Beating tempoS={tempoS} />;
}
