import { describe, expect, test } from 'vitest';
import { agreementText } from '../../../scripts/agreement/agreement-text.ts';
import { readRatings } from '../../../scripts/agreement/read-ratings.ts';
import { SHROUT_FLEISS } from '../../compare/shrout-fleiss.ts';

const told = (text: string): string => {
  const read = readRatings(text);
  if (!read.ok) throw new Error(read.error.words);
  return agreementText(read.value);
};

test('peak flow by two meters: the published bias and limits', () => {
  // Bland and Altman 1986, Lancet 1:307, table 1, first readings. The limits are of 1.96 deviations where the paper takes 2; its interval of the bias from memory.
  const large = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
  const mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];
  const lines = told(`person,mini,large\n${large.map((x, i) => `${i},${mini[i]},${x}`).join('\n')}\n`).split('\n');
  expect(lines[0]).toBe('17 people, measured by mini, large');
  expect(lines[1]).toMatch(/^large less mini: bias -2\.1 \(95 % interval -22\.\d to 17\.8\)$/);
  expect(lines[2]).toMatch(/^95 % limits of agreement: -78\.1 to 73\.9 /);
});

test('four judges: the published correlations, and no difference of two', () => {
  // Shrout and Fleiss 1979, Psychol Bull 86:420, table 4.
  const text = told(`target;a;b;c;d\r\n${SHROUT_FLEISS.map((row, i) => [i, ...row].join(';')).join('\r\n')}\r\n`);
  expect(text).toContain('ICC(2,1) 0.29 (agreement), ICC(3,1) 0.71 (consistency)');
  expect(text).not.toContain('less');
});

test('people who are all alike have no correlation, and contrary values no standard error', () => {
  expect(told('p,a,b\n1,4,4\n2,4,4')).toContain('differ too little');
  expect(told('p,a,b\n1,1,9\n2,9,1\n3,5,5')).toContain('no standard error of measurement');
});

describe('a table that can’t be read says so in one sentence', () => {
  test.each([
    { text: '', says: /first line must name/ },
    { text: 'person,camera\n1,2\n2,3', says: /first line must name/ },
    { text: 'person,a,b\n1,2,3', says: /at least two people/ },
    { text: 'person,a,b\n1,2,3\n2,3', says: /^Line 3 has 2 columns, the first line 3/ },
    { text: 'person,a,b\n1,2,3\n2,,3', says: /^"" on line 3 is no number/ },
    { text: 'person,a,b\n1,2,3\n2,1e3,3', says: /^"1e3" on line 3 is no number/ },
  ])('$text', ({ text, says }) => {
    expect(readRatings(text)).toMatchObject({ ok: false, error: { words: expect.stringMatching(says) } });
  });
});
