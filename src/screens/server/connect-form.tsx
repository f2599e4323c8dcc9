import { type FormEvent, useState } from 'react';
import { Notice } from '../parts/notice.tsx';
import { useServerWords } from '../words/server-catalogues.ts';

/** An id of FHIR R4. */
const ID = /^[A-Za-z0-9\-.]{1,64}$/;

interface ConnectFormProps {
  /** The server asks for no sign-in. */
  readonly open: boolean;
  readonly busy: boolean;
  readonly onConnect: (id: string) => void;
}

/** Who the person is on the server. */
export function ConnectForm({ open, busy, onConnect }: ConnectFormProps) {
  const words = useServerWords();
  const [id, setId] = useState('');
  const [wrong, setWrong] = useState(false);
  const connect = (event: FormEvent) => {
    event.preventDefault();
    const said = id.trim();
    setWrong(!ID.test(said));
    if (ID.test(said)) onConnect(said);
  };
  return (
    <form className="record-parts" onSubmit={connect}>
      {open ? (
        <Notice icon="warning" look="caution">
          <p>{words.openServer}</p>
        </Notice>
      ) : null}
      <label className="record-field">
        {words.id}
        <input
          type="text"
          value={id}
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          aria-describedby="server-id-hint"
          aria-invalid={wrong}
          onChange={({ target }) => setId(target.value)}
        />
      </label>
      <p id="server-id-hint" className="soft small">
        {words.idHint}
      </p>
      {wrong ? (
        <p className="lock-differs" role="alert">
          {words.idWrong}
        </p>
      ) : null}
      <button type="submit" className="button" data-look="main" disabled={busy}>
        {busy ? words.working : words.connect}
      </button>
    </form>
  );
}
