import { symptomsAround } from '../../dose/symptoms-around.ts';
import { setEndMs } from '../../record/set-end.ts';
import type { SymptomReport } from '../../symptoms/symptom-report.ts';
import { symptomShift } from '../../symptoms/symptom-shift.ts';
import { useDay } from '../day/use-day.ts';
import { feltIn } from '../glide/felt-in.ts';
import type { ShownSet } from '../services.ts';
import { useGlideWords } from '../words/glide-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import './set-symptoms.css';

function Moment({ name, told }: { readonly name: string; readonly told: SymptomReport | null }) {
  const { felt } = useGlideWords();
  const { feel, report } = useWords();
  const [strength, ...more] = told ? feltIn(told, felt, feel, report.sides) : [felt.notTold];
  return (
    <div>
      <dt>{name}</dt>
      <dd className={told ? 'set-symptoms-strength numbers' : 'soft'}>{strength}</dd>
      {more.map((each) => (
        <dd key={each} className="small">
          {each}
        </dd>
      ))}
    </div>
  );
}

/** What was felt before and after a set, and whether it moved. Nothing when neither was told. */
export function SetSymptoms({ set }: { readonly set: ShownSet }) {
  const { felt } = useGlideWords();
  const { log } = useDay();
  if (!log) return null;
  const itemId = log.done.find(({ id }) => id === set.id)?.itemId ?? null;
  const { before, after } = symptomsAround(log, { id: set.id, itemId, endedAt: new Date(setEndMs(set)).toISOString() });
  if (!before && !after) return null;
  const shift = before && after ? symptomShift(before, after).kind : 'unknown';
  return (
    <section className="set-symptoms" aria-labelledby="set-symptoms-title">
      <h2 id="set-symptoms-title">{felt.title}</h2>
      <dl>
        <Moment name={felt.before} told={before} />
        <Moment name={felt.after} told={after} />
      </dl>
      {shift === 'unknown' ? null : <p>{felt.moved[shift]}</p>}
    </section>
  );
}
