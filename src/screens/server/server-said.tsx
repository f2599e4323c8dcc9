import type { Sent } from '../../sync/send-waiting.ts';
import type { Taken } from '../../sync/take-in-new.ts';
import { Notice } from '../parts/notice.tsx';
import { useServerWords } from '../words/server-catalogues.ts';

/** What was sent, and what the server does not want. */
export function SentWords({ confirmed, unwanted }: Sent) {
  const words = useServerWords();
  const [first] = unwanted;
  const detail = first && 'detail' in first.why ? first.why.detail : '';
  const ids = unwanted.flatMap((each) => each.ids);
  return (
    <Notice icon={first ? 'warning' : 'check'} look={first ? 'caution' : 'calm'} title={words.sent(confirmed)}>
      {first ? <p>{words.unwanted(ids.length, detail)}</p> : null}
    </Notice>
  );
}

/** What was taken in, and what could not be. */
export function TakenWords({ fresh, grown, conflicts, refused }: Taken) {
  const words = useServerWords();
  const isWhole = conflicts + refused.length === 0;
  return (
    <Notice icon={isWhole ? 'check' : 'warning'} look={isWhole ? 'calm' : 'caution'} title={words.taken(fresh, grown)}>
      {conflicts > 0 ? <p>{words.conflicts(conflicts)}</p> : null}
      {refused.length > 0 ? <p>{words.unread(refused.length)}</p> : null}
    </Notice>
  );
}

/** What came of signing out. */
export function SignedOutWords({ there }: { readonly there: boolean }) {
  const { signIn } = useServerWords();
  return (
    <Notice icon="check" look="calm">
      <p>{there ? signIn.ended : signIn.endedHere}</p>
    </Notice>
  );
}
