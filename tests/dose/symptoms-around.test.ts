import { expect, test } from 'vitest';
import { symptomsAround } from '../../src/dose/symptoms-around.ts';
import { report } from '../symptoms/told.ts';
import { done, line } from './plan.ts';

const glide = line('nerve-glide');
const tap = line('foot-tap', {}, 2);

test('the report after names its set, the newest one before it is that of its line', () => {
  const set = done(glide, 4, 10);
  const early = report(4, 8, { itemId: glide.id });
  const before = report(4, 9, { itemId: glide.id, intensity: 3 });
  const after = report(4, 11, { moment: 'after-set', setId: set.id, itemId: glide.id });
  expect(symptomsAround({ reports: [after, before, early], done: [set] }, set)).toEqual({ before, after });
});

test('what was told before another set of the line, or for another line, is not told of this one', () => {
  const [first, second] = [done(glide, 4, 10), done(glide, 4, 12)];
  const reports = [report(4, 9, { itemId: glide.id }), report(4, 11, { itemId: tap.id })];
  expect(symptomsAround({ reports, done: [first, second, done(tap, 4, 11.5)] }, second)).toEqual({ before: null, after: null });
  const anew = report(4, 11, { itemId: glide.id });
  expect(symptomsAround({ reports: [...reports, anew], done: [first, second] }, second).before).toBe(anew);
});

test('what was told later is not before it', () => {
  const set = done(glide, 4, 10);
  expect(symptomsAround({ reports: [report(4, 11, { itemId: glide.id })], done: [set] }, set).before).toBeNull();
});

test('of a set whose line is not known the report after tells it; without either nothing before is known', () => {
  const set = { ...done(glide, 4, 10), itemId: null };
  const before = report(4, 9, { itemId: glide.id });
  const after = report(4, 11, { moment: 'after-set', setId: set.id, itemId: glide.id });
  expect(symptomsAround({ reports: [before, after], done: [] }, set)).toEqual({ before, after });
  expect(symptomsAround({ reports: [before], done: [] }, set)).toEqual({ before: null, after: null });
});
