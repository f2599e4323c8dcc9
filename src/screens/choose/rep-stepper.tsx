import { Button, Group, Input, Label, NumberField } from 'react-aria-components/NumberField';
import { Icon } from '../parts/icon.tsx';
import { useWords } from '../words/words-context.tsx';
import { LEAST_REPS, MOST_REPS } from './choices.ts';
import './rep-stepper.css';

/** The dose: how many repetitions, with two large buttons. */
export function RepStepper({ reps, onChange }: { readonly reps: number; readonly onChange: (reps: number) => void }) {
  const { choose } = useWords();
  return (
    <NumberField
      className="stepper"
      value={reps}
      minValue={LEAST_REPS}
      maxValue={MOST_REPS}
      onChange={(value) => {
        // An emptied field is not a dose: it keeps the last one.
        if (Number.isInteger(value)) onChange(value);
      }}
    >
      <Label>{choose.reps}</Label>
      <Group>
        <Button slot="decrement" aria-label={choose.fewer}>
          <Icon name="minus" size={30} />
        </Button>
        <Input />
        <Button slot="increment" aria-label={choose.moreReps}>
          <Icon name="plus" size={30} />
        </Button>
      </Group>
    </NumberField>
  );
}
