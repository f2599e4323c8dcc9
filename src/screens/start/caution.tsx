import { Link } from 'wouter';
import { Notice } from '../parts/notice.tsx';
import { useWords } from '../words/words-context.tsx';
import './caution.css';

/** When to stop, and whom to ask. */
export function Caution() {
  const { start } = useWords();
  return (
    <section className="caution" aria-labelledby="caution-title">
      <Notice icon="warning" look="caution">
        <h2 id="caution-title">{start.cautionTitle}</h2>
        {start.caution.map((line) => (
          <p key={line}>{line}</p>
        ))}
        <p>
          <Link href="/urgent" className="caution-link">
            {start.redFlagsLink}
          </Link>
        </p>
      </Notice>
    </section>
  );
}
