import { useEffect, useState } from 'react';
import { useLocation } from 'wouter';
import { today as planNow } from '../../dose/today.ts';
import type { DiaryEntry } from '../../record/diary-entry.ts';
import type { Person } from '../../record/person.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { entryNow } from '../day/entry-now.ts';
import { useDay } from '../day/use-day.ts';
import { clockNow } from '../parts/clock-now.ts';
import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import { usePerson } from '../people/person-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { useAskedBeforeClosing, useKeptDraft } from './kept-draft.ts';
import { draftOf, itemsOfDraft, newDraft, type PlanDraft } from './plan-draft.ts';
import { PlanForm } from './plan-form.tsx';
import './plan-screen.css';

/** A plan where there was none: for somebody of a therapist's list the therapist decides. */
const firstDraft = (person: Person | undefined): PlanDraft =>
  person ? newDraft('therapist', person.affectedSide ?? 'left') : newDraft();

/** What the therapist changes is the therapist's plan from then on, whoever made it. */
const asTherapist = (draft: PlanDraft): PlanDraft =>
  draft.by.role === 'therapist' ? draft : { ...draft, by: { role: 'therapist', name: '' } };

/** A plan, from the usual starting doses or from the one that holds, unless that is the invented one. */
export function PlanScreen() {
  const { plan, prescribe, people, app } = useWords();
  const person = usePerson()?.person;
  const home = person ? '/' : '/today';
  const { log, today, problem, add } = useDay();
  const [, navigate] = useLocation();
  const [draft, setDraft] = useState<PlanDraft | null>(null);
  const [unsaved, setUnsaved] = useState<'changed' | 'from-before' | null>(null);
  /** The plan that held when this one was begun. */
  const [before, setBefore] = useState<string | null>(null);
  const kept = useKeptDraft();
  useAskedBeforeClosing(unsaved !== null);
  useEffect(() => {
    if (draft || (!log && !problem)) return;
    const own = today?.prescription.origin === 'own' && today.prescription.items.length > 0 ? today.prescription : null;
    const waiting = kept.of(own?.id ?? null);
    const first = own && log && today ? draftOf(own, log, today.day) : firstDraft(person);
    setDraft(waiting ?? (person ? asTherapist(first) : first));
    setUnsaved(waiting && 'from-before');
    setBefore(today?.prescription.id ?? null);
  }, [draft, log, today, problem, person, kept]);
  if (!draft) return <p className="heard">{app.loading}</p>;
  const { by, revised, selfChecks } = draft;
  const save = async (then: string) => {
    const written: DiaryEntry = {
      ...entryNow(),
      kind: 'prescription',
      by: by.role === 'therapist' ? { role: 'therapist', name: by.name.trim() } : { role: 'patient', name: '' },
      revises: (revised ?? today?.prescription)?.id ?? null,
      items: itemsOfDraft(draft),
      selfChecks,
    };
    const saved = await add([written], (now) => (planNow(now, clockNow())?.prescription.id ?? null) === before);
    if (!saved) return;
    kept.drop();
    navigate(then === '/today' ? home : then);
  };
  const change = (changed: PlanDraft) => {
    setDraft(changed);
    setUnsaved((was) => was ?? 'changed');
    kept.keep(changed);
  };
  const drop = () => {
    kept.drop();
    setDraft(null);
  };
  return (
    <Page
      className="plan"
      title={person ? people.person.planFor(person.name) : plan.title}
      lead={by.role === 'therapist' ? prescribe.lead : plan.lead}
      back={home}
    >
      <DayProblem problem={problem} />
      {unsaved === 'from-before' ? (
        <Notice icon="file" look="calm" title={plan.unsaved}>
          <button type="button" className="button" onClick={drop}>
            {plan.dropUnsaved}
          </button>
        </Notice>
      ) : null}
      <PlanForm draft={draft} onChange={change} onSave={(then) => void save(then)} />
    </Page>
  );
}
