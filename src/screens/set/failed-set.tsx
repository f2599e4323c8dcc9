import { useEffect, useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { CameraDevice } from '../../capture/camera.ts';
import { CameraSelect } from '../choose/camera-select.tsx';
import { useChoices } from '../choose/choices.ts';
import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import { UnstoredActions } from '../result/unstored-actions.tsx';
import type { Problem, SetPlan } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';
import './failed-set.css';
import { stickersOfPlan } from './by-stickers.ts';
import { useRun } from './run-context.tsx';
import { problemSays } from './sticker-problem.ts';

/** The same plan with another camera. */
const withCamera = (plan: SetPlan, deviceId: string | null): SetPlan =>
  plan.pictures.kind === 'camera' ? { ...plan, pictures: { kind: 'camera', deviceId } } : plan;

/** Why a set did not start or broke off, what to do, and the way to do it. */
export function FailedSet({ problem, plan }: { readonly problem: Problem; readonly plan: SetPlan }) {
  const all = useWords();
  const { result, set, day } = all;
  const services = useServices();
  const run = useRun();
  const { deviceId } = useChoices((s) => s.choices);
  const choose = useChoices((s) => s.choose);
  const [cameras, setCameras] = useState<readonly CameraDevice[]>([]);
  const fromCamera = plan.pictures.kind === 'camera';
  useEffect(() => {
    if (fromCamera) services.cameras().then(setCameras);
  }, [fromCamera, services]);
  const words = problemSays(problem, stickersOfPlan(plan) !== null, all);
  const unstoredId = problem.kind === 'not-stored' ? (problem.keptId ?? null) : null;
  const [, navigate] = useLocation();
  const back = plan.pictures.kind === 'example' ? '/' : `/choose/${plan.pictures.kind}`;
  return (
    <Page className="failed" title={words.title} lead={words.todo} back={back}>
      <div className="failed-parts">
        {problem.warnings && problem.warnings.length > 0 ? (
          <Notice icon="warning" look="caution">
            <ul>
              {problem.warnings.map((warning) => (
                <li key={warning}>{result.warnings[warning]}</li>
              ))}
            </ul>
          </Notice>
        ) : null}
        {cameras.length > 1 ? (
          <CameraSelect cameras={cameras} chosen={deviceId} onChoose={(id) => choose({ deviceId: id })} />
        ) : null}
        {/* A set that only this page has: first to keep it. Another one would take its place. */}
        {unstoredId === null ? null : <UnstoredActions id={unstoredId} onStored={({ id }) => navigate(`/set/${id}`)} />}
        <div className="failed-actions">
          {unstoredId === null ? (
            <button type="button" className="button" data-look="main" onClick={() => run.begin(withCamera(plan, deviceId))}>
              {set.tryAgain}
            </button>
          ) : null}
          {fromCamera && unstoredId === null ? (
            <Link
              href={plan.line ? `/by-hand/${plan.line.itemId}/${plan.side}` : `/count/${plan.exercise}/${plan.side}`}
              className="button"
            >
              {day.go.byHand}
            </Link>
          ) : null}
          {problem.keptId === undefined ? null : (
            <Link href={`/set/${problem.keptId}`} className="button">
              {set.seeKept}
            </Link>
          )}
          <Link href="/" className="button">
            {result.home}
          </Link>
        </div>
      </div>
    </Page>
  );
}
