import { useState } from 'react';
import { Link } from 'wouter';
import { editedReps } from '../../record/rep-edit.ts';
import { CompareWith } from '../compare/compare-with.tsx';
import { SetSymptoms } from '../feel/set-symptoms.tsx';
import { TellAfter, useToldAfter } from '../feel/tell-after.tsx';
import { GlideCurve } from '../glide/glide-curve.tsx';
import { GlideCycles } from '../glide/glide-cycles.tsx';
import { GlideNumbers } from '../glide/glide-numbers.tsx';
import { GlideSaid } from '../glide/glide-said.tsx';
import { exerciseWords } from '../parts/exercise-words.ts';
import { limbsOf } from '../parts/limb-words.ts';
import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import { whenIn } from '../parts/when.ts';
import { usePerson } from '../people/person-context.tsx';
import type { Problem, ShownSet } from '../services.ts';
import { useWords } from '../words/words-context.tsx';
import { AngleCurve } from './angle-curve.tsx';
import { CurveFiles } from './curve-files.tsx';
import { CurveLegend } from './curve-legend.tsx';
import { DoAgain } from './do-again.tsx';
import { EditList } from './edit-list.tsx';
import { keptSummary } from './kept-summary.ts';
import { Recount } from './recount.tsx';
import { RemoveSet } from './remove-set.tsx';
import { RepTable } from './rep-table.tsx';
import { ResultHead } from './result-head.tsx';
import './result-screen.css';
import { ResultNotices } from './result-notices.tsx';
import { SetProfile } from './set-profile.tsx';
import { type StoredSetInUse, useStoredSet } from './use-stored-set.ts';

function Result({ set, change, problem, onStored }: StoredSetInUse & { readonly set: ShownSet }) {
  const all = useWords();
  const { locale, exercises, result, problems } = all;
  // A person's sets are found in their review, one's own on the first screen.
  const person = usePerson()?.person;
  const told = useToldAfter(set);
  const [removing, setRemoving] = useState<Problem | null>(null);
  const reps = editedReps(set);
  const failed = problem ?? removing;
  const words = failed ? problems[failed.kind](failed.detail ?? '') : null;
  const title = `${exerciseWords(set, exercises).plural}, ${limbsOf(set.exercise, all)[set.side].legLower}`;
  const glide = set.result?.glide ?? null;
  const curve = set.result && set.result.curve.tMs.length > 1 ? set.result.curve : null;
  const from = set.source === 'camera' ? '' : ` · ${set.fileName ?? result.sources[set.source]}`;
  return (
    <Page className="result" title={title} lead={`${whenIn(locale, set.startedAt)}${from}`} back={person ? '/review' : '/'}>
      <div className="result-parts">
        <ResultNotices set={set} onStored={onStored} />
        {glide ? <GlideSaid glide={glide} /> : null}
        <ResultHead set={set} />
        {set.result ? <Recount of={set.result} /> : null}
        {glide ? <GlideNumbers glide={glide} footUncertaintyDeg={keptSummary(set)?.uncertaintyDeg ?? null} /> : null}
        <SetSymptoms set={set} />
        <div className="result-actions">
          {told === false ? <TellAfter set={set} /> : null}
          <DoAgain set={set} main={told !== false && set.onDisk} />
          <Link href="/" className="button">
            {person?.name ?? result.home}
          </Link>
        </div>
        {words ? (
          <Notice icon="warning" look="fault" title={words.title} alert>
            <p>{words.todo}</p>
          </Notice>
        ) : null}
        {curve && glide ? <GlideCurve curve={curve} cycles={glide.cycles} /> : null}
        {curve && !glide ? (
          <section className="result-curve" aria-labelledby="curve-title">
            <div className="result-curve-head">
              <h2 id="curve-title">{result.curveTitle}</h2>
              <CurveLegend />
            </div>
            <AngleCurve curve={curve} reps={reps} />
            <CurveFiles set={set} />
          </section>
        ) : null}
        {glide ? <GlideCycles glide={glide} /> : null}
        <SetProfile set={set} />
        <CompareWith set={set} />
        <RepTable reps={reps} onChange={change} />
        <EditList edits={set.edits} />
        <RemoveSet id={set.id} onProblem={setRemoving} />
      </div>
    </Page>
  );
}

/** A stored set: just finished, reopened, or interrupted. */
export function ResultScreen({ id }: { readonly id: string }) {
  const { app, problems } = useWords();
  const stored = useStoredSet(id);
  if (stored.set) return <Result {...stored} set={stored.set} />;
  if (!stored.problem) return <p className="heard">{app.loading}</p>;
  const words = problems[stored.problem.kind](stored.problem.detail ?? '');
  return (
    <Page className="result" title={words.title} lead={words.todo} back="/">
      {null}
    </Page>
  );
}
