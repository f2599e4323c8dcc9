import { withinLimits } from '../../dose/dose.ts';
import type { GivenPlan } from '../../dose/given-plan.ts';
import type { PrescribedExercise } from '../../dose/prescribed-exercise.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import type { Words } from '../words/words.ts';

/** One line of a plan in words: each a sentence, or part of one, of its own. */
export interface LineSays {
  readonly name: string;
  readonly legs: string;
  readonly about: string;
  /** How many, how often. */
  readonly dose: string;
  readonly often: string;
  readonly far: string;
  readonly pace: string;
  readonly rest: string;
  readonly limit: string;
}

export function lineSays(item: PrescribedExercise, words: Words): LineSays {
  const { day, plan, handOver, sides, locale } = words;
  const { says } = handOver;
  const { plural, about } = prescribedWords(item.exercise, words);
  const { setsADay, repsASet, holdS } = withinLimits(item.start, item.progression.limits);
  const degrees = (deg: number) => new Intl.NumberFormat(locale, { maximumFractionDigits: 0 }).format(deg);
  const [first = 'left', second] = item.sides;
  const { target, daysAWeek, tempoS } = item;
  return {
    name: plural,
    legs: second ? says.eachLeg : sides[first].leg,
    about,
    dose: day.dose(repsASet, holdS),
    often: `${plan.setsADay(setsADay)}, ${daysAWeek === 7 ? says.everyDay : says.daysAWeek(daysAWeek)}`,
    far:
      target.kind === 'range' ? day.go.target.range(degrees(target.fromDeg), degrees(target.toDeg)) : day.go.target[target.kind],
    pace: tempoS === null ? says.atOwnPace : day.go.tempo(tempoS),
    rest: says.rest(item.restS),
    limit: says.limit(item.symptomLimit),
  };
}

/** Who decided, and when it was written. The moment is told as the day it has where it is read. */
export function originSays(
  { by, writtenAt }: Pick<GivenPlan, 'by' | 'writtenAt'>,
  { handOver: { says }, locale }: Words,
): string {
  const who = by.role === 'patient' ? says.byPatient : by.name.trim() ? says.by(by.name.trim()) : says.byTherapist;
  return `${who}, ${says.written(dayWritten(writtenAt, locale))}`;
}

/** A moment as the day that it has here. */
export const dayWritten = (moment: string, locale: string): string =>
  new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'long', year: 'numeric' }).format(Date.parse(moment));
