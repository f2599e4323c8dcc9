import { useState } from 'react';
import { useLocation } from 'wouter';
import { newId } from '../../record/new-id.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { Page } from '../parts/page.tsx';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';
import './people-screen.css';
import './person-screen.css';
import { PersonForm } from './person-form.tsx';

/** Adds somebody to the list, and goes on to them. */
export function NewPersonScreen() {
  const { people } = useServices();
  const { form } = useWords().people;
  const [, navigate] = useLocation();
  const [problem, setProblem] = useState<Problem | null>(null);
  return (
    <Page className="person" title={form.addTitle} back="/people">
      <DayProblem problem={problem} />
      <PersonForm
        first={{ name: '', affectedSide: null, notes: '' }}
        onCancel={() => navigate('/people')}
        onKeep={async (fields) => {
          const now = new Date().toISOString();
          const id = newId();
          const saved = await people.save({ ...fields, id, schema: 1, addedAt: now, changedAt: now, seenUntil: null });
          if (saved.ok) navigate(`/person/${id}`, { replace: true });
          else setProblem(saved.error);
        }}
      />
    </Page>
  );
}
