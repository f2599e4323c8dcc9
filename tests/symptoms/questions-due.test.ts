import { describe, expect, test } from 'vitest';
import { questionsDue } from '../../src/symptoms/questions-due.ts';
import { checkIn, dayOf, momentOf, redFlags, report } from './told.ts';

const log = { redFlags: [redFlags(4, 9)], reports: [], checkIns: [], prescriptions: [{ at: momentOf(1, 9) }] };
const low = report(4, 8, { intensity: 2, kinds: ['pain'], places: [{ region: 'buttock', side: 'left' }] });

describe('the red-flag questions are due', () => {
  test('before the first set of a day', () => {
    expect(questionsDue({ ...log, redFlags: [redFlags(3, 9)] }, dayOf(4))).toEqual(['new-day']);
  });

  test.each([
    { name: 'no more once answered', change: {}, due: [] },
    {
      name: 'when the prescription changed',
      change: { prescriptions: [{ at: momentOf(4, 10) }] },
      due: ['prescription-changed'],
    },
    { name: 'not when symptoms stay', change: { reports: [low, { ...low, at: momentOf(4, 10) }] }, due: [] },
    // Two points: the scale's minimal detectable change, Childs et al. 2005, Spine 30:1331 (abstract).
    { name: 'not for one point', change: { reports: [low, { ...low, at: momentOf(4, 10), intensity: 3 }] }, due: [] },
    { name: 'for two points', change: { reports: [low, { ...low, at: momentOf(4, 10), intensity: 4 }] }, due: ['symptom-rise'] },
    {
      name: 'for a new kind',
      change: { reports: [low, { ...low, at: momentOf(4, 10), kinds: ['pain', 'numbness'] as const }] },
      due: ['new-kind'],
    },
    {
      name: 'further down',
      change: { reports: [low, { ...low, at: momentOf(4, 10), places: [{ region: 'sole', side: 'left' } as const] }] },
      due: ['further-down'],
    },
    {
      name: 'for a rise after a fall',
      change: {
        reports: [
          { ...low, intensity: 5 },
          { ...low, at: momentOf(4, 10), intensity: 2 },
          { ...low, at: momentOf(4, 11), intensity: 5 },
        ],
      },
      due: ['symptom-rise'],
    },
    {
      name: 'for a check-in too',
      change: { reports: [low], checkIns: [checkIn(4, 10, { ...low, kind: 'check-in', at: momentOf(4, 10), intensity: 6 })] },
      due: ['symptom-rise'],
    },
    {
      name: 'not for answers that were not given',
      change: { reports: [low, report(4, 10, { intensity: 'not-answered', kinds: 'not-answered', places: 'not-answered' })] },
      due: [],
    },
    {
      name: 'not for a first report without one to compare',
      change: { reports: [{ ...low, at: momentOf(4, 10), intensity: 8 }] },
      due: [],
    },
  ])('$name', ({ change, due }) => {
    expect(questionsDue({ ...log, ...change }, dayOf(4))).toEqual(due);
  });

  test('no more once they were asked again after a change', () => {
    const reports = [low, { ...low, at: momentOf(4, 10), intensity: 6 }];
    expect(questionsDue({ ...log, reports, redFlags: [redFlags(4, 9), redFlags(4, 11)] }, dayOf(4))).toEqual([]);
  });
});
