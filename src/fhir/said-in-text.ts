import type { CodeableConcept, Coding, Period, Quantity, Timing } from '@medplum/fhirtypes';

/** Values of FHIR as a line of text says them; '' where there is nothing to say. */
export const codingText = (coding: Coding | undefined): string => coding?.display ?? coding?.code ?? '';

export const conceptText = (concept: CodeableConcept | undefined): string =>
  concept?.text ?? (concept?.coding ?? []).map(codingText).join(', ');

export const conceptTexts = (concepts: readonly CodeableConcept[] | undefined): string =>
  (concepts ?? []).map(conceptText).join('; ');

export function quantityText(quantity: Quantity | undefined): string {
  if (quantity?.value === undefined) return '';
  return quantity.unit === '°' ? `${quantity.value}°` : `${quantity.value} ${quantity.unit ?? ''}`.trimEnd();
}

/** A moment as FHIR has it, to the minute. */
export function momentText(moment: string | undefined): string {
  const [, day, time] = /^(\d{4}-\d\d-\d\d)T(\d\d:\d\d)/.exec(moment ?? '') ?? [];
  return day === undefined ? (moment ?? '') : `${day} ${time} UTC`;
}

export function periodText(period: Period | undefined): string {
  const [start, end] = [momentText(period?.start), momentText(period?.end)];
  if (start === '' || end === '') return start || end;
  return `${start} to ${end}`;
}

const PERIODS: Readonly<Record<string, string>> = { d: 'day', wk: 'week' };

export function timingText(timing: Timing | undefined): string {
  const { frequency, period, periodUnit } = timing?.repeat ?? {};
  if (frequency === undefined || period === undefined || periodUnit === undefined) return '';
  const unit = PERIODS[periodUnit] ?? periodUnit;
  return `${frequency} ${frequency === 1 ? 'time' : 'times'} ${period === 1 ? `a ${unit}` : `in ${period} ${unit}s`}`;
}
