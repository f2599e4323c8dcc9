import { Button, Group, Input, Label, NumberField } from 'react-aria-components/NumberField';
import { Icon } from '../parts/icon.tsx';
import './number-stepper.css';

interface NumberStepperProps {
  readonly label: string;
  /** What the two buttons are called for those who do not see them. */
  readonly fewer: string;
  readonly more: string;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly step?: number;
  readonly onChange: (value: number) => void;
}

/** A whole number with two large buttons. */
export function NumberStepper({ label, fewer, more, value, least, most, step = 1, onChange }: NumberStepperProps) {
  return (
    <NumberField
      className="stepper"
      value={value}
      minValue={least}
      maxValue={most}
      step={step}
      onChange={(changed) => {
        // An emptied field is no number: it keeps the last one.
        if (Number.isInteger(changed)) onChange(changed);
      }}
    >
      <Label>{label}</Label>
      <Group>
        <Button slot="decrement" aria-label={fewer}>
          <Icon name="minus" size={30} />
        </Button>
        <Input />
        <Button slot="increment" aria-label={more}>
          <Icon name="plus" size={30} />
        </Button>
      </Group>
    </NumberField>
  );
}
