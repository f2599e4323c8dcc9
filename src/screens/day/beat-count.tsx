import { useEffect, useMemo, useRef, useState } from 'react';
import { NumberStepper } from '../choose/number-stepper.tsx';
import { useSpaceKey } from '../parts/use-space-key.ts';
import { BeatBar } from '../set/beat-bar.tsx';
import { GlideGuide } from '../set/glide-guide.tsx';
import { useSounds } from '../set/sounds-context.tsx';
import { usePace } from '../set/use-pace.ts';
import { useGlideSetWords } from '../words/glide-set-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import type { HandPlan } from './hand-plan.ts';

/** Seconds for a repetition where none are prescribed, and what may be chosen. Chosen: slow enough for every exercise that is held. */
const TEMPO = { usualS: 4, leastS: 2, mostS: 12 } as const;
/** Time to take one's place after the press, seconds. Chosen. */
const LEAD_S = 5;

type BeatState = { readonly kind: 'stands' } | { readonly kind: 'leads'; readonly leftS: number } | { readonly kind: 'runs' };

interface BeatCountProps {
  readonly plan: HandPlan;
  readonly reps: number;
  readonly onOneMore: () => void;
}

/** Counts by a beat: whoever moves with it needs neither camera nor hand. It ends with the dose; the space bar or the button pauses it. */
export function BeatCount({ plan, reps, onOneMore }: BeatCountProps) {
  const { day, set } = useWords();
  const glideWords = useGlideSetWords();
  const sounds = useSounds();
  const { dose } = plan;
  const glide = plan.exercise === 'nerve-glide';
  const [tempoS, setTempoS] = useState(plan.tempoS ?? TEMPO.usualS);
  const [beat, setBeat] = useState<BeatState>({ kind: 'stands' });
  const done = reps >= dose.repsASet;
  const running = usePace(
    useMemo(() => ({ tempoS, holdS: dose.holdS }), [tempoS, dose.holdS]),
    beat.kind === 'runs' && !done,
  );
  const over = (running.moment?.rep ?? 1) - 1;
  const heard = useRef(0);
  // As many as the beat has led through, also where the page slept between.
  useEffect(() => {
    for (; heard.current < over; heard.current += 1) onOneMore();
  }, [over, onOneMore]);
  const shown = useRef(reps);
  useEffect(() => {
    if (beat.kind === 'runs' && reps > shown.current) sounds.say(done ? set.doseDone(reps) : String(reps));
    shown.current = reps;
    if (done) setBeat({ kind: 'stands' });
  }, [reps, done, beat.kind, sounds, set]);
  useEffect(() => {
    if (beat.kind !== 'leads') return;
    sounds.play('second');
    const timer = setTimeout(() => setBeat(beat.leftS > 1 ? { kind: 'leads', leftS: beat.leftS - 1 } : { kind: 'runs' }), 1000);
    return () => clearTimeout(timer);
  }, [beat, sounds]);
  const toggle = () => {
    sounds.unlock();
    setBeat((now) => (now.kind === 'stands' && !done ? { kind: 'leads', leftS: LEAD_S } : { kind: 'stands' }));
  };
  useSpaceKey(toggle);
  return (
    <>
      <div className="hand-count-lead" data-glide={glide}>
        {glide ? <GlideGuide pace={running} side={plan.side} speaks={beat.kind === 'runs'} /> : null}
        <div className="hand-count-panel">
          <span className="hand-count-number numbers" aria-live="polite">
            {beat.kind === 'leads' ? beat.leftS : reps}
          </span>
          <span className="hand-count-one">
            {beat.kind === 'leads' ? day.byHand.beatLeads : done ? set.doseDone(reps) : set.ofTarget(dose.repsASet)}
          </span>
        </div>
      </div>
      {beat.kind === 'runs' && !glide ? <BeatBar pace={running} /> : null}
      <div className="hand-count-beat">
        <button
          type="button"
          className="button hand-count-start"
          data-look={beat.kind === 'stands' ? 'main' : 'stop'}
          disabled={done}
          onClick={toggle}
        >
          {beat.kind === 'stands' ? day.byHand.beatStart : day.byHand.beatPause}
        </button>
        {beat.kind === 'stands' ? (
          <NumberStepper
            label={day.byHand.tempo}
            fewer={day.byHand.faster}
            more={day.byHand.slower}
            value={tempoS}
            least={TEMPO.leastS}
            most={TEMPO.mostS}
            onChange={setTempoS}
          />
        ) : null}
      </div>
      <p className="soft">{glide ? glideWords.beatKeys : day.byHand.beatKeys}</p>
    </>
  );
}
