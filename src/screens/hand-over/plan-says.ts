import { ALWAYS_SAID, cautionsOf } from '../../dose/cautions.ts';
import { withinLimits } from '../../dose/dose.ts';
import type { GivenPlan } from '../../dose/given-plan.ts';
import { legGroups } from '../../dose/leg-groups.ts';
import type { PrescribedExercise } from '../../dose/prescribed-exercise.ts';
import { standingOfDose } from '../../dose/usual-dose.ts';
import { prescribedWords } from '../day/prescribed-words.ts';
import { limbsOf } from '../parts/limb-words.ts';
import { languageOf } from '../words/languages.ts';
import { SEEN_BY_CATALOGUES } from '../words/seen-by-catalogues.ts';
import type { Words } from '../words/words.ts';

/** One line of a plan in words: each a sentence, or part of one, of its own. */
interface LineSays {
  readonly name: string;
  readonly legs: string;
  readonly about: string;
  /** How many, how often. */
  readonly dose: string;
  readonly often: string;
  readonly far: string;
  readonly pace: string;
  /** How it is to be measured; empty: as the person likes. */
  readonly seen: string;
  readonly rest: string;
  readonly limit: string;
}

function lineSays(item: PrescribedExercise, words: Words): LineSays {
  const seenBy = SEEN_BY_CATALOGUES[languageOf(null, [words.locale])];
  const { day, plan, handOver, locale } = words;
  const { says } = handOver;
  const { plural, about } = prescribedWords(item.exercise, words);
  const { setsADay, repsASet, holdS } = withinLimits(item.start, item.progression.limits);
  const degrees = (deg: number) => new Intl.NumberFormat(locale, { maximumFractionDigits: 0 }).format(deg);
  const [first = 'left', second] = item.sides;
  const { target, daysAWeek, tempoS } = item;
  return {
    name: plural,
    legs: second ? says.eachLeg : limbsOf(item.exercise, words)[first].leg,
    about,
    dose: day.dose(repsASet, holdS),
    often: `${plan.setsADay(setsADay)}, ${daysAWeek === 7 ? says.everyDay : says.daysAWeek(daysAWeek)}`,
    far:
      target.kind === 'range' ? day.go.target.range(degrees(target.fromDeg), degrees(target.toDeg)) : day.go.target[target.kind],
    pace: tempoS === null ? says.atOwnPace : day.go.tempo(tempoS),
    seen: item.seenBy === 'stickers' ? seenBy.told : '',
    rest: says.rest(item.restS),
    limit: says.limit(item.symptomLimit),
  };
}

/** The lines of one exercise in words: what they share once, and of each line what is its own. */
export interface GroupSays {
  readonly name: string;
  readonly about: string;
  readonly lines: readonly {
    readonly legs: string;
    readonly dose: string;
    /** Only what the lines of other legs say otherwise. */
    readonly own: readonly string[];
  }[];
  readonly shared: readonly string[];
  /** Those of any line, but the one that stands apart, being of all lines: when to stop. */
  readonly cautions: readonly string[];
}

const cautionTexts = (items: readonly PrescribedExercise[], words: Words): readonly string[] =>
  cautionsOf({ cautions: items.flatMap((item) => item.cautions) })
    .filter((id) => id !== ALWAYS_SAID)
    .map((id) => words.day.go.caution[id]);

/** What holds for every line of a plan of several exercises: rest, limit and cautions, to be said once for all. */
export function saidOfAll(items: readonly PrescribedExercise[], words: Words): readonly string[] {
  const said = items.map((item) => {
    const { rest, limit } = lineSays(item, words);
    return [rest, limit, ...cautionTexts([item], words)];
  });
  const [first = [], ...others] = said;
  return legGroups(items).length < 2 ? [] : first.filter((text) => others.every((texts) => texts.includes(text)));
}

/**
 * @param group as `legGroups` makes it
 * @param once what is said for all lines elsewhere
 */
export function groupSays(group: readonly PrescribedExercise[], words: Words, once: readonly string[] = []): GroupSays {
  const told = group.map((item) => ({ item, says: lineSays(item, words) }));
  const sentences = ({ far, pace, seen, rest, limit }: LineSays) =>
    [far, pace, seen, rest, limit].filter((text) => text !== '' && !once.includes(text));
  const isShared = (text: string) => told.every(({ says }) => sentences(says).includes(text));
  const [first] = told;
  return {
    name: first?.says.name ?? '',
    about: first?.says.about ?? '',
    lines: told.map(({ item, says }) => {
      const usual = standingOfDose(item) === 'usual' ? ` (${words.prescribe.usualShort})` : '';
      return {
        legs: says.legs,
        dose: `${says.dose}; ${says.often}${usual}`,
        own: sentences(says).filter((text) => !isShared(text)),
      };
    }),
    shared: first ? sentences(first.says).filter(isShared) : [],
    cautions: cautionTexts(group, words).filter((text) => !once.includes(text)),
  };
}

/** How much the exercises of a plan say, in characters. */
export const charactersOf = (items: readonly PrescribedExercise[], words: Words, once: readonly string[]): number =>
  legGroups(items)
    .flatMap((group) => {
      const { name, about, lines, shared, cautions } = groupSays(group, words, once);
      return [name, about, ...shared, ...cautions, ...lines.flatMap(({ legs, dose, own }) => [legs, dose, ...own])];
    })
    .join(' ').length;

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
