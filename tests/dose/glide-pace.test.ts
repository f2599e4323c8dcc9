import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { cueOf, GLIDE_ENDS, GLIDE_TEMPO_S, glideAngles, glidePace } from '../../src/dose/glide-pace.ts';
import { paceAt } from '../../src/dose/pace.ts';
import { startingDose } from '../../src/dose/starting-doses.ts';
import { ms } from '../../src/units.ts';

const at = (elapsedMs: number, tempoS = 4, holdS = 0) => glideAngles(paceAt(ms(elapsedMs), { tempoS, holdS }));

describe('what leads a glide', () => {
  test('begins with the foot pulled up and the head down, and has the foot pointed and the head up half a cycle later', () => {
    expect(at(0)).toEqual(GLIDE_ENDS.pulled);
    expect(at(2000)).toEqual(GLIDE_ENDS.pointed);
    expect(at(4000)).toEqual(GLIDE_ENDS.pulled);
  });

  test('is a slide at each moment: the head is up by the same share as the foot is pointed, never the other way round', () => {
    const { pulled, pointed } = GLIDE_ENDS;
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 600_000 }),
        fc.integer({ min: 2, max: 12 }),
        fc.integer({ min: 0, max: 5 }),
        (elapsedMs, tempoS, holdS) => {
          const { footDeg, headDeg } = at(elapsedMs, tempoS, holdS);
          const foot = (footDeg - pulled.footDeg) / (pointed.footDeg - pulled.footDeg);
          const head = (headDeg - pulled.headDeg) / (pointed.headDeg - pulled.headDeg);
          expect(head).toBeCloseTo(foot, 9);
          expect(foot).toBeGreaterThanOrEqual(0);
          expect(foot).toBeLessThanOrEqual(1);
        },
      ),
    );
  });

  test('lifts the head exactly while the foot points, and lowers it while the foot pulls up', () => {
    for (let t = 0; t < 4000; t += 20) {
      const [before, after] = [at(t), at(t + 19)];
      const cue = cueOf(paceAt(ms(t), { tempoS: 4, holdS: 0 }).beat);
      expect(Math.sign(after.headDeg - before.headDeg)).toBe(cue === 'point' ? 1 : -1);
      expect(Math.sign(after.footDeg - before.footDeg)).toBe(cue === 'point' ? -1 : 1);
    }
  });

  test('stands still while it is held, without a cue', () => {
    expect(at(2500, 4, 2)).toEqual(GLIDE_ENDS.pointed);
    expect(cueOf('hold')).toBeNull();
  });

  test('goes at the prescribed tempo, else at the one that is offered', () => {
    expect(glidePace({ tempoS: 6, holdS: 1 })).toEqual({ tempoS: 6, holdS: 1 });
    expect(glidePace({ tempoS: null, holdS: 0 }).tempoS).toBe(GLIDE_TEMPO_S);
    expect(startingDose('nerve-glide', '', ['left']).tempoS).toBe(GLIDE_TEMPO_S);
  });
});
