import { Page } from '../parts/page.tsx';
import { useStoredWords } from '../words/stored-catalogues.ts';
import { Amounts } from './amounts.tsx';
import { DeleteAll } from './delete-all.tsx';
import { KeepStorage } from './keep-storage.tsx';
import { OfflineState } from './offline-state.tsx';
import { SaveAll } from './save-all.tsx';
import '../lock/lock-screen.css';
import './stored-screen.css';

/** What is kept on this machine, how to save all of it, and how to delete all of it. */
export function StoredScreen() {
  const words = useStoredWords();
  return (
    <Page className="stored" title={words.title} lead={words.lead} back="/">
      <div className="stored-parts">
        <Amounts />
        <OfflineState />
        <KeepStorage />
        <SaveAll />
        <DeleteAll />
      </div>
    </Page>
  );
}
