/** A language that is read from right to left mirrors the page: style sheets name sides by the line of text, not by the screen. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { expect, test } from 'vitest';

const SCREENS = join(import.meta.dirname, '..', '..', 'src', 'screens');

const sheets = readdirSync(SCREENS, { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.css'))
  .map((name) => [relative(SCREENS, join(SCREENS, name)), readFileSync(join(SCREENS, name), 'utf8')] as const);

/** What lies over a picture or a drawing of the body, whose sides are those of the body. */
const OF_THE_BODY = new Set(['desk/leg-handles.css', 'set/glide-stage.css']);

const SIDED =
  /^\s*((margin|padding|border)-(left|right)(-\w+)?|left|right|float|clear|text-align|border-(top|bottom)-(left|right)-radius)\s*:\s*([^;]+);/;

/** The line names a side of the screen. */
function isPhysical(line: string): boolean {
  const found = SIDED.exec(line);
  if (found) return !/^(float|clear|text-align)$/.test(found[1] ?? '') || /\b(left|right)\b/.test(found[7] ?? '');
  // Four values, of which right and left differ.
  const four = /^\s*(?:margin|padding|inset)\s*:\s*(\S+) (\S+) (\S+) (\S+);/.exec(line);
  return four !== null && four[2] !== four[4];
}

test('no side of the screen is named, but over a picture of the body', () => {
  expect(sheets.length).toBeGreaterThan(80);
  const found = sheets
    .filter(([name]) => !OF_THE_BODY.has(name))
    .flatMap(([name, css]) => css.split('\n').flatMap((line) => (isPhysical(line) ? [`${name}: ${line.trim()}`] : [])));
  expect(found).toEqual([]);
});

test.each([
  ['  margin-left: 1rem;', true],
  ['  left: 0;', true],
  ['  text-align: right;', true],
  ['  padding: 0 1rem 0 2rem;', true],
  ['  border-left-width: 1rem;', true],
  ['  margin-inline-start: 1rem;', false],
  ['  text-align: center;', false],
  ['  padding: 0 1rem 1rem 1rem;', false],
  ['  inset-inline-end: 0;', false],
])('%s is told as a side of the screen: %s', (line, physical) => {
  expect(isPhysical(line)).toBe(physical);
});

test('what moves by a style sheet moves only for those whom motion does not disturb', () => {
  const CALM = /@media \(prefers-reduced-motion: no-preference\) \{[^{}]*(\{[^{}]*\}[^{}]*)*\}/g;
  const moving = sheets.filter(([, css]) => /\b(animation|transition|scroll-behavior)(-\w+)*\s*:/.test(css.replaceAll(CALM, '')));
  expect(moving.map(([name]) => name)).toEqual([]);
  expect(sheets.filter(([, css]) => CALM.test(css)).length).toBeGreaterThan(0);
});
