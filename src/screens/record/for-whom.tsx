import { LONGEST_NAME, type Person, type PersonId } from '../../record/person.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { useWords } from '../words/words-context.tsx';
import { useRecordWords } from './use-record-words.ts';

/** Whom a therapist takes a record in for. */
export type Whom = { readonly kind: 'new'; readonly name: string } | { readonly kind: 'here'; readonly id: PersonId };

interface ForWhomProps {
  readonly people: readonly Person[];
  readonly whom: Whom;
  readonly onChange: (whom: Whom) => void;
  /** Nothing was typed where a name is needed. */
  readonly missing: boolean;
}

/** Somebody new, or somebody in the list. */
export function ForWhom({ people, whom, onChange, missing }: ForWhomProps) {
  const words = useWords();
  const { form } = words.people;
  const { bring } = useRecordWords();
  const sorted = people.toSorted((a, b) => a.name.localeCompare(b.name, words.locale));
  const first = sorted[0];
  return (
    <>
      {first ? (
        <OptionCards
          legend={bring.forWhom}
          name="for-whom"
          options={[
            { value: 'new', ...bring.somebodyNew },
            { value: 'here', ...bring.somebodyHere },
          ]}
          chosen={whom.kind}
          onChoose={(kind) => onChange(kind === 'new' ? { kind, name: '' } : { kind, id: first.id })}
        />
      ) : null}
      {whom.kind === 'new' ? (
        <>
          <label className="record-field">
            {form.name}
            <input
              type="text"
              value={whom.name}
              maxLength={LONGEST_NAME}
              autoComplete="off"
              aria-invalid={missing}
              aria-describedby="record-name-hint"
              onChange={({ target }) => onChange({ kind: 'new', name: target.value })}
            />
          </label>
          <p id="record-name-hint" className={missing ? 'lock-differs' : 'soft small'} role={missing ? 'alert' : undefined}>
            {missing ? form.noName : form.nameHint}
          </p>
        </>
      ) : (
        <label className="record-field">
          {bring.person}
          <select value={whom.id} onChange={({ target }) => onChange({ kind: 'here', id: target.value })}>
            {sorted.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
    </>
  );
}
