import type { GlideCycle } from '../../reps/glide-coordination.ts';
import { useGlideWords } from '../words/glide-catalogues.ts';
import './glide-marks.css';

/** Every cycle as a mark, told apart by shape, fill and word. Nothing without a cycle. */
export function GlideMarks({ cycles }: { readonly cycles: readonly GlideCycle[] }) {
  const { marks } = useGlideWords();
  if (cycles.length === 0) return null;
  return (
    <div className="glide-marks">
      <h3>{marks.title}</h3>
      <ol>
        {cycles.map(({ startMs, pattern, reason }, i) => (
          <li key={startMs} data-pattern={pattern}>
            <span className="glide-sign" aria-hidden="true" />
            <span className="numbers soft">{i + 1}</span>
            <span className="glide-word">{marks.patterns[pattern]}</span>
            {reason ? <span className="glide-reason soft">{marks.reasons[reason]}</span> : null}
          </li>
        ))}
      </ol>
      <p className="soft small">{marks.hint}</p>
    </div>
  );
}
