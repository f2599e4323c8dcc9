/** Characters of a therapist's name. Chosen. */
const LONGEST_NAME = 80;

interface TherapistNameProps {
  readonly label: string;
  readonly value: string;
  readonly onChange: (name: string) => void;
}

/** The name of a therapist, which may stay empty. */
export const TherapistName = ({ label, value, onChange }: TherapistNameProps) => (
  <label>
    {label}
    <input
      type="text"
      value={value}
      maxLength={LONGEST_NAME}
      autoComplete="name"
      onChange={(event) => onChange(event.target.value)}
    />
  </label>
);
