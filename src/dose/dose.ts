/** How much, for each side. Whole numbers from 0 on, sets and repetitions from 1 on. */
export interface Dose {
  readonly setsADay: number;
  readonly repsASet: number;
  /** How long each repetition is held, seconds; 0: not held. */
  readonly holdS: number;
}

export type DoseField = keyof Dose;

export const DOSE_FIELDS: readonly DoseField[] = ['setsADay', 'repsASet', 'holdS'];

/** The therapist's limits: no rule leaves them. */
export type DoseLimits = Readonly<Record<DoseField, { readonly least: number; readonly most: number }>>;

/** The dose brought inside the limits. */
export const withinLimits = (dose: Dose, limits: DoseLimits): Dose => ({
  setsADay: within(dose.setsADay, limits.setsADay),
  repsASet: within(dose.repsASet, limits.repsASet),
  holdS: within(dose.holdS, limits.holdS),
});

const within = (value: number, { least, most }: DoseLimits[DoseField]): number => Math.max(least, Math.min(most, value));

export const sameDose = (a: Dose, b: Dose): boolean =>
  a.setsADay === b.setsADay && a.repsASet === b.repsASet && a.holdS === b.holdS;
