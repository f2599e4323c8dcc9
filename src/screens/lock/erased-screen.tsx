import { Page } from '../parts/page.tsx';
import { useStoredWords } from '../words/stored-catalogues.ts';

/** All that is left to say when everything is deleted. Going on loads the program anew. */
export function ErasedScreen() {
  const { erase } = useStoredWords();
  return (
    <Page className="erased" title={erase.done} lead={erase.doneAbout}>
      <button
        type="button"
        className="button"
        onClick={() => {
          window.location.hash = '/';
          window.location.reload();
        }}
      >
        {erase.anew}
      </button>
    </Page>
  );
}
