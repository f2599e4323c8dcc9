import { Link } from 'wouter';
import { useStoredWords } from '../words/stored-catalogues.ts';

/** Where one's own sets and diary are saved as a file that can be taken in again, and where those of others are. */
export function SaveAll() {
  const { files } = useStoredWords();
  return (
    <section>
      <h2>{files.title}</h2>
      <p>{files.about}</p>
      <p>
        <Link href="/send" className="button">
          {files.save}
        </Link>
      </p>
      <p>
        {files.people} <Link href="/people">{files.openPeople}</Link>
      </p>
    </section>
  );
}
