import { NumberStepper } from '../choose/number-stepper.tsx';
import type { NumberWords } from '../words/plan-words.ts';

interface CountFieldProps {
  readonly words: NumberWords;
  readonly value: number;
  readonly least: number;
  readonly most: number;
  readonly step?: number;
  readonly onChange: (value: number) => void;
}

/** One whole number of a plan, with its two buttons. */
export const CountField = ({ words, ...rest }: CountFieldProps) => (
  <NumberStepper label={words.label} fewer={words.fewer} more={words.more} {...rest} />
);
