import { useEffect, useMemo, useRef } from 'react';
import { glidePace } from '../../dose/glide-pace.ts';
import type { SetPlan } from '../services.ts';
import { GlideGuide } from './glide-guide.tsx';
import './glide-stage.css';
import { Picture } from './picture.tsx';
import { useRunState } from './run-context.tsx';
import { usePace } from './use-pace.ts';

/** A set of glides: the picture while one finds one's place, then what to move along with, the picture small in its corner. */
export function GlideStage({ plan }: { readonly plan: SetPlan }) {
  const runs = useRunState(({ stage }) => stage === 'ready' || stage === 'counting');
  const isOver = useRunState(({ stage }) => stage === 'ended');
  // Once it leads it goes on leading: nothing changes places while one exercises.
  const led = useRef(false);
  led.current ||= runs;
  const size = useRunState((s) => s.opened?.size ?? null);
  const stage = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (size) stage.current?.style.setProperty('--picture-shape', `${size.width} / ${size.height}`);
  }, [size]);
  const { tempoS, holdS } = plan.guide;
  const pace = usePace(
    useMemo(() => glidePace({ tempoS, holdS }), [tempoS, holdS]),
    runs,
  );
  return (
    <div className="glide-stage" ref={stage} data-side={plan.side} data-leads={led.current}>
      <Picture plan={plan} />
      {led.current ? <GlideGuide pace={pace} side={plan.side} speaks={!isOver} /> : null}
    </div>
  );
}
