import { useEffect, useRef, useState } from 'react';
import { Redirect } from 'wouter';
import { Page } from '../parts/page.tsx';
import type { SetPlan } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { drawFrame } from '../set/draw-frame.ts';
import { useStickerWords } from '../words/sticker-catalogues.ts';
import { jointOf } from './joint-of.ts';
import { createSetUp } from './set-up.ts';
import type { SetUp } from './set-up-state.ts';
import { StickerLive } from './sticker-live.tsx';
import './sticker-screen.css';
import { useWaitingPlan } from './waiting-plan.ts';

function SettingUp({ plan }: { readonly plan: SetPlan }) {
  const words = useStickerWords();
  const services = useServices();
  const canvas = useRef<HTMLCanvasElement>(null);
  const [setUp, setSetUp] = useState<SetUp | null>(null);
  const [attempt, setAttempt] = useState(0);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `attempt` counts the wishes to try again.
  useEffect(() => {
    const made = createSetUp({
      services,
      plan,
      onFrame: (frame) => {
        if (canvas.current) drawFrame(canvas.current, frame);
      },
      wait: (forMs) => new Promise((done) => setTimeout(done, forMs)),
    });
    setSetUp(made);
    return made.stop;
  }, [services, plan, attempt]);
  const film = plan.pictures.kind === 'file';
  const chosen = film ? '/choose/file' : '/choose/camera';
  const back = plan.line ? `/today/go/${plan.line.itemId}/${plan.side}` : chosen;
  return (
    <Page
      className="stickers"
      title={film ? words.film.title : words.title}
      lead={film ? words.film.lead : words.lead[jointOf(plan.exercise)]}
      back={back}
    >
      {setUp ? <StickerLive plan={plan} setUp={setUp} canvas={canvas} onAgain={() => setAttempt((n) => n + 1)} /> : null}
    </Page>
  );
}

/** Before a set by stickers: they are found or tapped in the live picture, or in the film's, and looked over. */
export function StickerScreen() {
  const plan = useWaitingPlan((s) => s.plan);
  // A page loaded anew has no set that waits.
  return plan ? <SettingUp plan={plan} /> : <Redirect to="/choose/camera" replace />;
}
