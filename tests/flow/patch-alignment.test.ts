import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cropOf, type Grey } from '../../src/flow/grey.ts';
import { alignPatch, type PatchAlignment, type PatchAlignmentOptions } from '../../src/flow/patch-alignment.ts';
import { type PatchTemplate, prepareTemplate } from '../../src/flow/patch-template.ts';
import { aboutPivot, type PlaneMotion, still } from '../../src/flow/plane-motion.ts';
import { buildPyramid } from '../../src/flow/pyramid.ts';
import { pgmPicture } from './pgm-picture.ts';
import {
  band,
  blobs,
  ellipseMask,
  mirrored,
  motionOf,
  type Rendering,
  render,
  type Surface,
  texture,
} from './synthetic-picture.ts';

const WIDTH = 200;
const HEIGHT = 160;
const CX = 90;
const CY = 80;
const pyramid = (picture: Grey) => buildPyramid(picture, 3);

function templateOf(rest: Grey, mask = ellipseMask(rest, CX, CY, 45, 25)): PatchTemplate {
  const template = prepareTemplate(pyramid(rest), mask);
  if (!template.ok) throw new Error(`expected a template, got ${JSON.stringify(template.error)}`);
  return template.value;
}
function aligned(
  template: PatchTemplate,
  picture: Grey,
  start?: PlaneMotion,
  options?: Partial<PatchAlignmentOptions>,
): PatchAlignment {
  const result = alignPatch(template, pyramid(picture), start ?? still(template.centroidX, template.centroidY), options);
  if (!result.ok) throw new Error(`expected an alignment, got ${JSON.stringify(result.error)}`);
  return result.value;
}
const shiftError = (found: PlaneMotion, truth: PlaneMotion): number =>
  Math.hypot(found.shiftX - truth.shiftX, found.shiftY - truth.shiftY);

const surfaces: readonly (readonly [string, Surface])[] = [
  ['texture', texture(3)],
  ['blobs', blobs(5, 200)],
  ['a soft-edged band', band(7, CX, CY, 26)],
];
const motions = [
  [0, 0.37, -0.62],
  [4.3, 2.3, -1.7],
  [-9, 5.2, 3.1],
  [8.5, -3, 2.5],
] as const;

test.each(surfaces)('turns and sub-pixel shifts of a patch are recovered: %s', (_, surface) => {
  const template = templateOf(render(surface, WIDTH, HEIGHT));
  for (const [rotation, dx, dy] of motions) {
    const motion = motionOf(rotation, dx, dy, CX, CY);
    const found = aligned(template, render(surface, WIDTH, HEIGHT, { motion }));
    expect(Math.abs(found.motion.rotationDeg - rotation)).toBeLessThan(0.1);
    expect(shiftError(found.motion, motion)).toBeLessThan(0.05);
    expect(found.converged).toBe(true);
    expect(found.zncc).toBeGreaterThan(0.99);
    expect(found.insideShare).toBe(1);
  }
});

test.each<[string, Rendering]>([
  ['gain 0.7 and bias', { gain: 0.7, bias: 30 }],
  ['noise of 4 grey levels', { noise: 4 }],
  ['dim and noisy', { gain: 0.7, bias: -10, noise: 3 }],
])('light and noise do not matter: %s', (_, rendering) => {
  const template = templateOf(render(texture(3), WIDTH, HEIGHT));
  for (const [rotation, dx, dy] of motions) {
    const motion = motionOf(rotation, dx, dy, CX, CY);
    const found = aligned(template, render(texture(3), WIDTH, HEIGHT, { motion, ...rendering }));
    expect(Math.abs(found.motion.rotationDeg - rotation)).toBeLessThan(0.1);
    expect(shiftError(found.motion, motion)).toBeLessThan(0.05);
  }
});

test('a fifth of the mask showing something else is kept out of the fit', () => {
  const surface = texture(3);
  const strange = texture(404);
  const rest = render(surface, WIDTH, HEIGHT);
  const mask = ellipseMask(rest, CX, CY, 45, 25);
  // The left fifth of the ellipse, where the part that turns never was.
  const border = 68;
  const share = mask.filter((m, i) => m > 0 && i % WIDTH < border).length / mask.filter((m) => m > 0).length;
  expect(share).toBeGreaterThan(0.19);
  const ground = render(strange, WIDTH, HEIGHT);
  const covered = (picture: Grey): Grey => ({
    ...picture,
    data: picture.data.map((v, i) => (i % WIDTH < border ? (ground.data[i] ?? 0) : v)),
  });
  const template = templateOf(covered(rest), mask);
  for (const [rotation, dx, dy] of motions) {
    const motion = motionOf(rotation, dx, dy, template.centroidX, template.centroidY);
    const picture = covered(render(surface, WIDTH, HEIGHT, { motion, gain: 0.7, bias: 15, noise: 2 }));
    const found = aligned(template, picture);
    expect(Math.abs(found.motion.rotationDeg - rotation)).toBeLessThan(0.1);
    expect(shiftError(found.motion, motion)).toBeLessThan(0.05);
    expect(found.keptShare).toBeLessThan(0.85);
  }
});

test('a change of size is found when asked for', () => {
  const template = templateOf(render(texture(3), WIDTH, HEIGHT));
  const motion = motionOf(5, 2, -3, CX, CY, 1.06);
  const found = aligned(template, render(texture(3), WIDTH, HEIGHT, { motion }), undefined, { allowScale: true });
  expect(found.motion.scale).toBeCloseTo(1.06, 3);
  expect(Math.abs(found.motion.rotationDeg - 5)).toBeLessThan(0.1);
});

test('the stated error of the rotation is about the spread under picture noise', () => {
  const surface = texture(3);
  const motion = motionOf(4.3, 2.3, -1.7, CX, CY);
  const template = templateOf(render(surface, WIDTH, HEIGHT));
  const found = Array.from({ length: 40 }, (_, k) =>
    aligned(template, render(surface, WIDTH, HEIGHT, { motion, noise: 8, noiseSeed: k + 1 })),
  );
  const spread = Math.sqrt(found.reduce((s, f) => s + (f.motion.rotationDeg - 4.3) ** 2, 0) / found.length);
  const stated = found.reduce((s, f) => s + f.rotationSeDeg, 0) / found.length;
  expect(stated / spread).toBeGreaterThan(0.6);
  expect(stated / spread).toBeLessThan(1.6);
});

test('a picture aligned with itself does not move', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 10_000 }), (seed) => {
      const picture = render(texture(seed), 97, 81);
      const { motion, zncc } = aligned(templateOf(picture, ellipseMask(picture, 48, 40, 30, 20)), picture);
      expect(Math.abs(motion.rotationDeg)).toBeLessThan(1e-3);
      expect(Math.hypot(motion.shiftX, motion.shiftY)).toBeLessThan(1e-3);
      expect(zncc).toBeGreaterThan(0.9999);
    }),
    { numRuns: 10 },
  );
});

test('mirrored pictures turn and shift the mirrored way', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 10_000 }),
      fc.double({ min: -6, max: 6, noNaN: true }),
      fc.double({ min: -2, max: 2, noNaN: true }),
      (seed, rotation, dx) => {
        const rest = render(texture(seed), 97, 81);
        const picture = render(texture(seed), 97, 81, { motion: motionOf(rotation, dx, 1, 48, 40) });
        const mask = (p: Grey) => ellipseMask(p, 48, 40, 30, 20);
        const plain = aligned(templateOf(rest, mask(rest)), picture);
        const mirror = aligned(templateOf(mirrored(rest), mask(rest)), mirrored(picture));
        expect(mirror.motion.rotationDeg).toBeCloseTo(-plain.motion.rotationDeg, 2);
        expect(mirror.motion.shiftX).toBeCloseTo(-plain.motion.shiftX, 2);
        expect(mirror.motion.shiftY).toBeCloseTo(plain.motion.shiftY, 2);
      },
    ),
    { numRuns: 12 },
  );
});

test('a turn by a and then by b is a turn by a + b', () => {
  fc.assert(
    fc.property(fc.double({ min: -6, max: 6, noNaN: true }), fc.double({ min: -6, max: 6, noNaN: true }), (a, b) => {
      const surface = texture(31);
      const turnedBy = (rotation: number) => render(surface, 121, 101, { motion: motionOf(rotation, 0, 0, 60, 50) });
      const template = (picture: Grey) => templateOf(picture, ellipseMask(picture, 60, 50, 36, 24));
      const once = aligned(template(turnedBy(0)), turnedBy(a)).motion.rotationDeg;
      const again = aligned(template(turnedBy(a)), turnedBy(a + b)).motion.rotationDeg;
      const both = aligned(template(turnedBy(0)), turnedBy(a + b)).motion.rotationDeg;
      expect(Math.abs(once + again - both)).toBeLessThan(0.05);
    }),
    { numRuns: 12 },
  );
});

test('crops with different origins and a start about another pivot give the same motion', () => {
  const motion = motionOf(6, 9, -5, CX, CY);
  const rest = render(texture(3), WIDTH, HEIGHT);
  const picture = render(texture(3), WIDTH, HEIGHT, { motion });
  const restCrop = cropOf(rest, { x: 30, y: 40, width: 120, height: 90 });
  const crop = cropOf(picture, { x: 37, y: 33, width: 130, height: 90 });
  if (!restCrop || !crop) throw new Error('the crops lie in the frame');
  const template = templateOf(restCrop, ellipseMask(restCrop, CX - 30, CY - 40, 45, 25));
  expect([template.centroidX, template.centroidY]).toEqual([CX, CY]);
  const found = alignPatch(template, pyramid(crop), aboutPivot(motionOf(4, 7, -3, CX, CY), 20, 10));
  expect(found.ok && Math.abs(found.value.motion.rotationDeg - 6)).toBeLessThan(0.1);
  expect(found.ok && shiftError(found.value.motion, motion)).toBeLessThan(0.05);
});

test('a lifted foot turns clockwise by the angle it was lifted', () => {
  const rest = pgmPicture('seated-foot-rest');
  // Toes to heel of the bare foot below the trouser leg.
  const template = templateOf(rest, ellipseMask(rest, 78, 133, 36, 13));
  const { motion, zncc } = aligned(template, pgmPicture('seated-foot-up'), motionOf(10, 0, 0, 98, 126));
  expect(zncc).toBeGreaterThan(0.8);
  expect(Math.abs(motion.rotationDeg - 15)).toBeLessThan(1.2);
});

test.each([
  [78, 133, 36, 13],
  [76, 134, 32, 11],
  [80, 132, 40, 16],
  [70, 133, 28, 12],
] as const)(
  'seen from above, a lifted foot also grows; with the scale free its turn holds for any mask about it: %d %d %d %d',
  (cx, cy, rx, ry) => {
    const rest = pgmPicture('seated-foot-rest');
    const template = templateOf(rest, ellipseMask(rest, cx, cy, rx, ry));
    const { motion, zncc } = aligned(template, pgmPicture('seated-foot-up'), motionOf(10, 0, 0, 98, 126), { allowScale: true });
    expect(zncc).toBeGreaterThan(0.95);
    expect(motion.scale).toBeGreaterThan(1.01);
    expect(Math.abs(motion.rotationDeg - 15)).toBeLessThan(1);
  },
);

test('blanks, and masks too small, make no template', () => {
  const blank = render(() => 100, 60, 60);
  expect(prepareTemplate(pyramid(blank), ellipseMask(blank, 30, 30, 20, 20))).toMatchObject({
    ok: false,
    error: { kind: 'flat', contrast: 0 },
  });
  expect(prepareTemplate(pyramid(blank), new Float32Array(3600))).toMatchObject({
    ok: false,
    error: { kind: 'too-small', pixels: 0 },
  });
});

test('stripes and rings, whose texture leaves a motion open, make no template', () => {
  const stripes = render((x) => 120 + 40 * Math.sin(x / 4), 100, 100);
  const rings = render((x, y) => 120 + 40 * Math.sin(Math.hypot(x - 50, y - 50) / 4), 101, 101);
  for (const picture of [stripes, rings]) {
    expect(prepareTemplate(pyramid(picture), ellipseMask(picture, 50, 50, 25, 25))).toEqual({
      ok: false,
      error: { kind: 'ambiguous' },
    });
  }
});

test('a start 8 degrees and 4 px off leads home, and one far off to the truth or to no match, never to a wrong turn', () => {
  let home = 0;
  for (let seed = 1; seed <= 12; seed++) {
    const template = templateOf(render(texture(seed), WIDTH, HEIGHT));
    for (const [rotation, distance] of [
      [8, 4],
      [20, 10],
    ] as const) {
      const sign = seed % 2 === 0 ? 1 : -1;
      const motion = motionOf(sign * rotation, distance * Math.cos(seed), distance * Math.sin(seed), CX, CY);
      const found = alignPatch(template, pyramid(render(texture(seed), WIDTH, HEIGHT, { motion })), still(CX, CY));
      const right = found.ok && Math.abs(found.value.motion.rotationDeg - sign * rotation) < 0.1;
      if (rotation === 8 && right) home++;
      expect(right || (found.ok ? found.value.zncc < 0.8 : found.error.kind === 'no-match')).toBe(true);
    }
  }
  expect(home).toBe(12);
});

test('a blank, a strange or a far-off picture is no match, never a NaN', () => {
  const template = templateOf(render(texture(3), WIDTH, HEIGHT));
  const start = still(CX, CY);
  expect(alignPatch(template, pyramid(render(() => 90, WIDTH, HEIGHT)), start)).toEqual({
    ok: false,
    error: { kind: 'no-match', zncc: 0 },
  });
  expect(alignPatch(template, pyramid(render(texture(3), WIDTH, HEIGHT)), motionOf(0, 150, 0, CX, CY))).toMatchObject({
    ok: false,
    error: { kind: 'outside' },
  });
  for (let seed = 500; seed < 510; seed++) {
    const strange = alignPatch(template, pyramid(render(texture(seed), WIDTH, HEIGHT)), start);
    if (!strange.ok) continue;
    expect(Object.values(strange.value).some(Number.isNaN)).toBe(false);
    expect(strange.value.zncc).toBeLessThan(0.7);
  }
});
