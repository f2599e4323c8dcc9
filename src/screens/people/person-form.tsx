import { type FormEvent, useRef, useState } from 'react';
import { LONGEST_NAME, LONGEST_NOTES, type Person } from '../../record/person.ts';
import { OptionCards } from '../choose/option-cards.tsx';
import { useWords } from '../words/words-context.tsx';

/** What the form asks for. */
export type PersonFields = Pick<Person, 'name' | 'affectedSide' | 'notes'>;

const SIDES = ['left', 'right', 'both', 'unsaid'] as const;

interface PersonFormProps {
  readonly first: PersonFields;
  readonly onKeep: (fields: PersonFields) => void;
  readonly onCancel: () => void;
}

/** Name or code, affected leg, notes. */
export function PersonForm({ first, onKeep, onCancel }: PersonFormProps) {
  const { people } = useWords();
  const [fields, setFields] = useState(first);
  const [missing, setMissing] = useState(false);
  const nameField = useRef<HTMLInputElement>(null);
  const set = (part: Partial<PersonFields>) => setFields((before) => ({ ...before, ...part }));
  const keep = (event: FormEvent) => {
    event.preventDefault();
    const name = fields.name.trim();
    setMissing(name === '');
    if (name === '') nameField.current?.focus();
    else onKeep({ ...fields, name });
  };
  return (
    <form className="person-form" onSubmit={keep} noValidate>
      <label>
        {people.form.name}
        <input
          ref={nameField}
          type="text"
          value={fields.name}
          maxLength={LONGEST_NAME}
          autoComplete="off"
          aria-invalid={missing}
          aria-describedby="person-name-hint"
          onChange={({ target }) => set({ name: target.value })}
        />
      </label>
      <p id="person-name-hint" className={missing ? 'person-form-fault' : 'soft small'} role={missing ? 'alert' : undefined}>
        {missing ? people.form.noName : people.form.nameHint}
      </p>
      <OptionCards
        legend={people.form.side}
        name="affected-side"
        options={SIDES.map((value) => ({ value, name: people.affected[value] }))}
        chosen={fields.affectedSide ?? 'unsaid'}
        onChoose={(side) => set({ affectedSide: side === 'unsaid' ? null : side })}
      />
      <label>
        {people.form.notes}
        <textarea
          value={fields.notes}
          rows={3}
          maxLength={LONGEST_NOTES}
          aria-describedby="person-notes-hint"
          onChange={({ target }) => set({ notes: target.value })}
        />
      </label>
      <p id="person-notes-hint" className="soft small">
        {people.form.notesHint}
      </p>
      <div className="person-actions">
        <button type="submit" className="button" data-look="main">
          {people.form.save}
        </button>
        <button type="button" className="button" onClick={onCancel}>
          {first.name === '' ? people.form.cancelNew : people.form.cancel}
        </button>
      </div>
    </form>
  );
}
