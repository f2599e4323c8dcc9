/** `npm run agreement`: how two or more ways of measuring the same people agree, from a table. For who tries the program against a goniometer. */
import { readFile } from 'node:fs/promises';
import { agreementText } from './agreement/agreement-text.ts';
import { readRatings } from './agreement/read-ratings.ts';

const BAD_ARGUMENTS = 2;
const HELP = `Tells how two or more ways of measuring the same people agree.

  npm run agreement -- TABLE.csv

  TABLE.csv  a line of names (person,goniometer,camera), then a line for each person, degrees with a point

With two ways: bias and 95 % limits of agreement (Bland and Altman). Always: ICC(2,1) and ICC(3,1) (Shrout and Fleiss), standard error of measurement and
minimal detectable change (Weir). What they mean: docs/agreement.md. One row a person: several of one person make all of it look surer than it is.
`;

function giveUp(words: string): never {
  process.stderr.write(`${words}\n`);
  process.exit(BAD_ARGUMENTS);
}

const [file, ...more] = process.argv.slice(2);
if (file === '--help' || file === '-h') {
  process.stdout.write(HELP);
  process.exit(0);
}
if (file === undefined || file.startsWith('-') || more.length > 0) giveUp('Name one table. See npm run agreement -- --help.');
const text = await readFile(file, 'utf8').catch(() => giveUp(`${file} can't be read: check the name.`));
const read = readRatings(text);
if (!read.ok) giveUp(`${file} is no table of measurements. ${read.error.words}`);
process.stdout.write(agreementText(read.value));
