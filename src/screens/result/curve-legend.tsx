import { useWords } from '../words/words-context.tsx';
import './curve-legend.css';

const LOOKS = ['complete', 'partial', 'struck'] as const;

/** What the fills of the curve's bands mean. */
export function CurveLegend() {
  const { result } = useWords();
  return (
    <ul className="curve-legend small">
      {LOOKS.map((look) => (
        <li key={look}>
          <span className="curve-swatch" data-look={look} aria-hidden="true" />
          {result.legend[look]}
        </li>
      ))}
    </ul>
  );
}
