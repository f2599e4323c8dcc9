import { fail, ok, type Result } from '../../src/result.ts';

/** What several ways, raters or days read on the same people. */
export interface Ratings {
  /** Names of the ways, at least two. */
  readonly ways: readonly string[];
  /** One row a person, one value a way, at least two rows. */
  readonly rows: readonly (readonly number[])[];
}

/** `words` is one sentence. */
interface RatingsUnread {
  readonly kind: 'ratings-unread';
  readonly words: string;
}

const wrong = (words: string) => fail({ kind: 'ratings-unread' as const, words });

/** A byte order mark, as some spreadsheets write it. */
const MARK = /^\uFEFF/;
const NUMBER = /^-?\d+(\.\d+)?$/;

/**
 * Reads a table: a line of names, then a line for each person, parted by commas or semicolons. The first column names the person (a number, no real name, will do)
 * and is not looked at; all others are numbers with a point.
 */
export function readRatings(text: string): Result<Ratings, RatingsUnread> {
  const lines = text
    .replace(MARK, '')
    .split(/\r?\n/)
    .filter((line) => line.trim() !== '')
    .map((line) => line.split(/[,;]/).map((cell) => cell.trim()));
  const [heads = [], ...people] = lines;
  const ways = heads.slice(1);
  if (ways.length < 2)
    return wrong('Its first line must name the person and at least two ways of measuring, as in person,goniometer,camera.');
  if (people.length < 2) return wrong('It needs at least two people, each on a line of their own.');
  const uneven = people.findIndex((cells) => cells.length !== heads.length);
  if (uneven >= 0)
    return wrong(`Line ${uneven + 2} has ${people[uneven]?.length} columns, the first line ${heads.length}: make them alike.`);
  for (const [i, cells] of people.entries()) {
    const odd = cells.slice(1).find((cell) => !NUMBER.test(cell));
    if (odd !== undefined)
      return wrong(
        `"${odd}" on line ${i + 2} is no number: write degrees with a point, as in 12.5, and leave out who was not measured in every way.`,
      );
  }
  return ok({ ways, rows: people.map((cells) => cells.slice(1).map(Number)) });
}
