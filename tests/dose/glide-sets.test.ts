import { expect, test } from 'vitest';
import { glideCount, glideSets } from '../../src/dose/glide-sets.ts';
import { progress } from '../../src/dose/progress.ts';
import { aGlide } from '../record/glide-builders.ts';
import { dayOf, report } from '../symptoms/told.ts';
import { done, doseLog, line, prescription } from './plan.ts';

const glide = line('nerve-glide', { sides: ['left', 'right'] });
const plan = prescription(glide, line('foot-tap', {}, 2));

test('cycles of several sets are counted together, unclear ones in the whole', () => {
  expect(glideCount([aGlide('SST'), aGlide('Sh')])).toEqual({ cycles: 5, slide: 3, tension: 1, unclear: 1, slideShare: 0.6 });
  expect(glideCount([aGlide('')]).slideShare).toBeNull();
  expect(glideCount([]).slideShare).toBeNull();
});

test('the measured glides come in order of time, with what was told around each; sets without the camera are none', () => {
  const [late, early, byHand] = [
    done(glide, 5, 10, { glide: aGlide('SS') }),
    done(glide, 4, 10, { glide: aGlide('TT') }),
    done(glide, 3, 10),
  ];
  const before = report(5, 9, { itemId: glide.id });
  const found = glideSets([late, early, byHand], { done: [late, early, byHand], reports: [before] });
  expect(found.map(({ id }) => id)).toEqual([early.id, late.id]);
  expect(found.map(({ around }) => around.before)).toEqual([null, before]);
});

test('progress has them for each leg of the days looked at, and none for other lines', () => {
  const sets = [
    done(glide, 2, 10, { glide: aGlide('S') }),
    done(glide, 8, 10, { glide: aGlide('SS') }),
    done(glide, 9, 10, { side: 'right', glide: aGlide('T') }),
  ];
  const found = progress(doseLog({ prescriptions: [plan], done: sets }), dayOf(9), 7);
  expect(found?.lines.map(({ glides }) => glides.map(({ glide: { cycles } }) => cycles.length))).toEqual([[2], [1], []]);
});
