import type { CodeableConcept } from '@medplum/fhirtypes';
import { cautionsOf } from '../dose/cautions.ts';
import { DOSE_FIELDS, type Dose, type DoseField } from '../dose/dose.ts';
import type { PrescribedExercise, Target } from '../dose/prescribed-exercise.ts';
import { concept } from './concept.ts';
import type { Naming } from './naming.ts';
import { TERMS } from './terms.ts';

const FIELDS: Readonly<Record<DoseField, string>> = { setsADay: 'sets a day', repsASet: 'repetitions a set', holdS: 's hold' };

const degrees = (value: number): string => `${Math.round(value * 100) / 100}`;

function targetText(target: Target): string {
  if (target.kind === 'range') return `Range from ${degrees(target.fromDeg)} to ${degrees(target.toDeg)} degrees`;
  return target.kind === 'full' ? 'Through the full range' : 'Only as far as symptoms start';
}

export const doseText = ({ setsADay, repsASet, holdS }: Dose): string =>
  `${setsADay} sets a day for each leg, ${repsASet} repetitions a set, ${holdS === 0 ? 'not held' : `each held ${holdS} s`}`;

function progressionText({ progression }: PrescribedExercise): string {
  const { limits, steps } = progression;
  const within = DOSE_FIELDS.map((field) => `${limits[field].least} to ${limits[field].most} ${FIELDS[field]}`).join(', ');
  const by = steps.map(({ field, by: amount }) => `${amount} ${FIELDS[field]}`).join(', then ');
  return `Dose within ${within}. Steps: ${by || 'none'}. Clear rise from ${progression.clearRise} points of 10`;
}

/** All that a line says that `ServiceRequest` has no element for, each with a code, a text and nothing left to guess. */
export function orderDetails(naming: Naming, line: PrescribedExercise): CodeableConcept[] {
  const { tempoS, restS, spread, daysAWeek, symptomLimit, start } = line;
  const detail = (code: Parameters<typeof concept<'order'>>[2], text: string) => concept(naming, 'order', code, text);
  return [
    detail('target', targetText(line.target)),
    detail('hold', start.holdS === 0 ? 'Not held' : `Each repetition held ${start.holdS} s`),
    detail('tempo', tempoS === null ? 'At one’s own pace' : `${tempoS} s for one repetition`),
    ...(line.seenBy === 'stickers' ? [detail('by-stickers', TERMS.order['by-stickers'])] : []),
    detail('rest', `At least ${restS} s between two sets of one leg`),
    detail('spread', spread === 'day' ? 'Sets spread over the waking day' : 'Sets one after the other, with the rest between'),
    detail('days-a-week', `${daysAWeek} days a week`),
    detail('symptom-limit', `No set while symptoms are above ${symptomLimit} of 10`),
    detail('progression', progressionText(line)),
    ...cautionsOf(line).map((caution) => concept(naming, 'order', caution, TERMS.order[caution])),
  ];
}
