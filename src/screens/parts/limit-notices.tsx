import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { Notice } from './notice.tsx';

/** What goes less well in this browser or on this machine, a sentence each; nothing where all goes well. */
export function LimitNotices() {
  const { away } = useWords();
  const limits = useServices().limits();
  if (limits.length === 0) return null;
  return (
    <Notice icon="warning" look="caution">
      {limits.map((limit) => (
        <p key={limit}>{away.limits[limit]}</p>
      ))}
    </Notice>
  );
}
