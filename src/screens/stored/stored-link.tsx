import { Link } from 'wouter';
import { Icon } from '../parts/icon.tsx';
import { useStoredWords } from '../words/stored-catalogues.ts';
import { ReadyLine } from './ready-line.tsx';

/** The way to what is stored here, and whether all works without a network. */
export function StoredLink() {
  const words = useStoredWords();
  return (
    <Link href="/stored" className="start-today">
      <span>
        <strong>{words.open}</strong>
        <span className="soft">{words.openAbout}</span>
        <ReadyLine />
      </span>
      <Icon name="forward" size={28} />
    </Link>
  );
}
