import { useWords } from '../words/words-context.tsx';
import './wordmark.css';

/** The name with its mark: two sides, level. */
export function Wordmark() {
  const { app } = useWords();
  return (
    <p className="wordmark">
      <svg width="30" height="30" viewBox="0 0 30 30" aria-hidden="true">
        <rect x="3" y="3" width="9" height="24" rx="4.5" className="wordmark-near" />
        <rect x="18" y="3" width="9" height="24" rx="4.5" className="wordmark-far" />
        <path d="M0 15h30" className="wordmark-level" />
      </svg>
      {app.name}
    </p>
  );
}
