import { useEffect } from 'react';
import { useLocation } from 'wouter';
import { Icon } from '../parts/icon.tsx';
import { limbsOf } from '../parts/limb-words.ts';
import { useScreenTitle } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import { seesHand } from './by-stickers.ts';
import { Caption } from './caption.tsx';
import { CountRing } from './count-ring.tsx';
import { Cue } from './cue.tsx';
import { FailedSet } from './failed-set.tsx';
import { GlideMarks } from './glide-marks.tsx';
import { hadToEnd } from './glide-note.ts';
import { GlideStage } from './glide-stage.tsx';
import { OnsetButton } from './onset-button.tsx';
import { PhaseBanner } from './phase-banner.tsx';
import { Picture } from './picture.tsx';
import { FileProgress, LoadingProgress } from './progress.tsx';
import { useRun, useRunState } from './run-context.tsx';
import './set-screen.css';
import type { SetPlan } from '../services.ts';
import { AwayPanel } from './away-panel.tsx';
import { asksSymptoms, isGlide, signalOf } from './signal.ts';
import { SoundSwitch } from './sound-switch.tsx';
import { troubleSays } from './store-trouble.ts';
import { useSetKeys } from './use-set-keys.ts';

/** Name of the set, where its pictures come from, the switch for sound. */
function TopLine({ plan }: { readonly plan: SetPlan }) {
  const words = useWords();
  const { exercises, set } = words;
  const heading = useScreenTitle(set.title);
  const { kind } = plan.pictures;
  return (
    <header className="set-top">
      <h1 ref={heading} tabIndex={-1}>
        {exercises[plan.exercise].plural}, {limbsOf(plan.exercise, words)[plan.side].legLower}
      </h1>
      {kind === 'camera' ? null : (
        <p className="set-source soft">{plan.pictures.kind === 'file' ? plan.pictures.file.name : set.example}</p>
      )}
      <SoundSwitch />
    </header>
  );
}

/** A set while it runs: made to be seen from a mat three metres away. */
function RunningScreen({ plan }: { readonly plan: SetPlan }) {
  const words = useWords();
  const { set, away: awayWords } = words;
  const run = useRun();
  const away = useRunState((s) => s.away);
  const hadBreak = useRunState((s) => s.breakSinceMs !== null);
  const fewPictures = useRunState((s) => s.fewPictures);
  const screenDims = useRunState((s) => s.screenDims);
  const camera = seesHand(plan);
  const glide = isGlide(plan);
  const ended = useRunState((s) => s.stage === 'ended');
  const opening = useRunState((s) => s.stage === 'opening');
  const durationMs = useRunState((s) => s.opened?.durationMs ?? null);
  const storeTrouble = useRunState((s) => s.storeTrouble);
  const signal = useRunState(({ stage, onsetMarked }) => signalOf(plan, stage, onsetMarked));
  useSetKeys(!ended, run);
  return (
    <div className="set">
      <TopLine plan={plan} />
      <main className="set-parts">
        <PhaseBanner />
        {away ? <AwayPanel problem={away} /> : null}
        {away ? null : glide ? <GlideStage plan={plan} /> : <Picture plan={plan} />}
        {/* What is said while there is no picture stands in its place. */}
        {away ? null : <Caption />}
        <CountRing />
        <div className="set-foot">
          {hadBreak ? (
            <p className="set-trouble" role="status">
              {awayWords.pause}
            </p>
          ) : null}
          {fewPictures && !away && !hadBreak ? (
            <p className="set-trouble" role="status">
              {awayWords.fewPictures}
            </p>
          ) : null}
          {screenDims && opening ? <p className="soft">{awayWords.screenDims}</p> : null}
          {opening ? <LoadingProgress /> : null}
          {glide ? <GlideMarks /> : null}
          {opening || glide || away ? null : <Cue guide={plan.guide} />}
          {!opening && durationMs !== null ? <FileProgress durationMs={durationMs} /> : null}
          {storeTrouble ? (
            <p className="set-trouble" role="status">
              {troubleSays(storeTrouble, words)}
            </p>
          ) : null}
        </div>
        {asksSymptoms(plan) ? <OnsetButton plan={plan} /> : null}
        <button type="button" className="button set-stop" data-look="stop" onClick={run.stop} disabled={ended}>
          <Icon name="stop" size={36} />
          {set.stop}
          <span className="set-stop-keys">{signal === 'stop' ? set.signalKeys(camera) : set.escapeKey}</span>
        </button>
      </main>
    </div>
  );
}

/** How long the reason why a set had to end stands before its result comes, ms. Chosen: the time to read it from afar and to lower the leg. */
const REASON_STANDS_MS = 6000;

/** The screen of the running set; leads on to its result, or says what went wrong. */
export function SetScreen() {
  const [, navigate] = useLocation();
  const plan = useRunState((s) => s.plan);
  const problem = useRunState((s) => s.problem);
  const finishedId = useRunState((s) => s.finishedId);
  const reasonStands = useRunState(({ endedWhy }) => hadToEnd(endedWhy));
  useEffect(() => {
    // A page loaded anew has no running set.
    if (finishedId === null) return plan ? undefined : navigate('/', { replace: true });
    const toResult = () => navigate(`/set/${finishedId}`, { replace: true });
    if (!reasonStands) return toResult();
    const timer = setTimeout(toResult, REASON_STANDS_MS);
    return () => clearTimeout(timer);
  }, [plan, finishedId, reasonStands, navigate]);
  if (!plan) return null;
  return problem ? <FailedSet problem={problem} plan={plan} /> : <RunningScreen plan={plan} />;
}
