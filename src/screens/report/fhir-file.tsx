import { useState } from 'react';
import type { Subject } from '../../fhir/prepared.ts';
import { newId } from '../../record/new-id.ts';
import { LONGEST_NAME } from '../../record/person.ts';
import { addDays, type CalendarDay } from '../../symptoms/calendar-day.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { DayProblem } from '../day/day-problem.tsx';
import { timeZoneHere } from '../parts/clock-now.ts';
import { saveFile } from '../parts/save-file.ts';
import { usePerson } from '../people/person-context.tsx';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useFhirWords } from '../words/fhir-catalogues.ts';
import type { NamedAs } from '../words/fhir-words.ts';
import { useWords } from '../words/words-context.tsx';
import type { FhirText } from './fhir-text.ts';
import { ownSubjectId } from './own-subject-id.ts';

type Saved = Pick<FhirText, 'sets' | 'entries' | 'leftOut'> & { readonly damaged: number };

/** Saves the last weeks of one person for a clinic's system. What makes the file is loaded with the first one. */
export function FhirFile({ day, weeks }: { readonly day: CalendarDay; readonly weeks: number }) {
  const words = useFhirWords();
  const { report } = useWords();
  const { everything } = useServices();
  const person = usePerson()?.person ?? null;
  const [as, setAs] = useState<NamedAs>('code');
  const [name, setName] = useState(person?.name ?? '');
  const [problem, setProblem] = useState<Problem | null>(null);
  const [saved, setSaved] = useState<Saved | null>(null);
  const save = async () => {
    const all = await everything();
    setProblem(all.ok ? null : all.error);
    setSaved(null);
    if (!all.ok) return;
    const { fhirText } = await import('./fhir-text.ts');
    const subject: Subject = { kind: 'own', id: person?.id ?? ownSubjectId(), name: as === 'name' ? name : null };
    const period = { from: addDays(day, 1 - 7 * weeks), to: day, timeZone: timeZoneHere() };
    const { text, ...found } = fhirText(all.value, subject, as === 'name', period, new Date().toISOString(), newId);
    saveFile(`evenside-fhir-${day}.json`, text, 'application/fhir+json');
    setSaved({ ...found, damaged: all.value.damaged.length });
  };
  const notWhole = saved?.leftOut.filter(({ why }) => why === 'typed-text').length ?? 0;
  return (
    <section className="report-files fhir-file" aria-labelledby="fhir-title">
      <h2 id="fhir-title">{words.title}</h2>
      <p className="soft small">{words.lead}</p>
      <OptionCards
        legend={words.whose}
        name="fhir-named"
        options={(['code', 'name'] as const).map((value) => ({ value, ...words.named[value] }))}
        chosen={as}
        onChoose={setAs}
      />
      {as === 'name' ? (
        <label className="fhir-name">
          {words.name}
          <input
            type="text"
            value={name}
            maxLength={LONGEST_NAME}
            autoComplete="name"
            onChange={(e) => setName(e.target.value)}
          />
        </label>
      ) : null}
      <div className="report-buttons">
        <button type="button" className="button" onClick={() => void save()}>
          {words.save(weeks)}
        </button>
      </div>
      <DayProblem problem={problem} />
      {saved ? (
        <p role="status">
          {words.saved(saved.sets, saved.entries)}
          {notWhole > 0 ? ` ${words.notWhole(notWhole)}` : null}
          {saved.damaged > 0 ? ` ${report.damaged(saved.damaged)}` : null}
        </p>
      ) : null}
    </section>
  );
}
