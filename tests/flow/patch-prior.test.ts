import { expect, test } from 'vitest';
import { alignPatch } from '../../src/flow/patch-alignment.ts';
import type { PosePrior } from '../../src/flow/patch-prior.ts';
import { prepareTemplate } from '../../src/flow/patch-template.ts';
import { buildPyramid } from '../../src/flow/pyramid.ts';
import { ellipseMask, motionOf, render, type Surface, texture } from './synthetic-picture.ts';

const WIDTH = 220;
const HEIGHT = 160;
const CX = 120;
const CY = 80;
/** A limb with two seams along it and hardly a mark across: the texture leaves sliding along it almost open. */
const faint = texture(8);
const seams: Surface = (x, y) =>
  110 + 50 * Math.exp(-(((y - 74) / 2.5) ** 2)) - 40 * Math.exp(-(((y - 88) / 3) ** 2)) + 0.02 * (faint(x, y) - 125);

const prior = (turnDeg: number, overrides: Partial<PosePrior> = {}): PosePrior => {
  // The joint at the limb's left end stays where it is while the limb turns about it.
  const jointX = -60;
  return {
    jointX,
    jointY: 0,
    atX: CX + jointX,
    atY: CY,
    jointSdPx: 3,
    turnRad: (turnDeg * Math.PI) / 180,
    turnSdRad: (8 * Math.PI) / 180,
    logScale: 0,
    logScaleSd: 0.03,
    ...overrides,
  };
};

const templateOf = () => {
  const rest = render(seams, WIDTH, HEIGHT, { noise: 2 });
  const template = prepareTemplate(buildPyramid(rest, 3), ellipseMask(rest, CX, CY, 50, 16));
  if (!template.ok) throw new Error(`expected a template, got ${template.error.kind}`);
  return template.value;
};

/** A turn about the joint, written about the mask's middle. */
const about = (deg: number) => {
  const a = (deg * Math.PI) / 180;
  return motionOf(deg, 60 * Math.cos(a) - 60, 60 * Math.sin(a), CX, CY);
};

test('the joint fixes what the seams leave open, and the seams fix the turn', () => {
  const template = templateOf();
  for (const turn of [-9, -3, 4, 8]) {
    const picture = buildPyramid(render(seams, WIDTH, HEIGHT, { motion: about(turn), noise: 2, noiseSeed: 5 }), 3);
    const found = alignPatch(template, picture, about(turn + 2), { allowScale: true, prior: prior(turn + 2) });
    if (!found.ok) throw new Error(`expected an alignment, got ${found.error.kind}`);
    expect(Math.abs(found.value.motion.rotationDeg - turn)).toBeLessThan(0.4);
    expect(Math.abs(found.value.motion.shiftX - about(turn).shiftX)).toBeLessThan(3);
    expect(Math.abs(found.value.motion.scale - 1)).toBeLessThan(0.03);
  }
});

test('a picture that fixes the turn outweighs a wrong expectation', () => {
  const rest = render(texture(3), WIDTH, HEIGHT);
  const template = prepareTemplate(buildPyramid(rest, 3), ellipseMask(rest, CX, CY, 45, 25));
  if (!template.ok) throw new Error(`expected a template, got ${template.error.kind}`);
  const picture = buildPyramid(render(texture(3), WIDTH, HEIGHT, { motion: about(6), noise: 3 }), 3);
  const found = alignPatch(template.value, picture, about(3), { allowScale: true, prior: prior(0) });
  expect(found.ok && Math.abs(found.value.motion.rotationDeg - 6)).toBeLessThan(0.1);
});

test('the less the picture says, the larger the stated error, up to that of the expectation', () => {
  const rest = render(seams, WIDTH, HEIGHT, { noise: 2 });
  const errors = [2, 10, 30].map((noise) => {
    const template = templateOf();
    const picture = buildPyramid(render(seams, rest.width, rest.height, { noise, noiseSeed: 9 }), 3);
    const found = alignPatch(template, picture, about(0), { allowScale: true, prior: prior(0) });
    if (!found.ok) throw new Error(`expected an alignment, got ${found.error.kind}`);
    return found.value.rotationSeDeg;
  });
  expect(errors[0]).toBeLessThan(errors[1] as number);
  expect(errors[1]).toBeLessThan(errors[2] as number);
  expect(errors[2]).toBeLessThan(9);
});

test('what covers a part of the patch is marked as not kept', () => {
  const rest = render(texture(3), WIDTH, HEIGHT);
  const template = prepareTemplate(buildPyramid(rest, 3), ellipseMask(rest, CX, CY, 45, 25));
  if (!template.ok) throw new Error(`expected a template, got ${template.error.kind}`);
  const strange = render(texture(404), WIDTH, HEIGHT);
  const covered = { ...rest, data: rest.data.map((v, i) => (i % WIDTH < CX - 18 ? (strange.data[i] ?? 0) : v)) };
  const found = alignPatch(template.value, buildPyramid(covered, 3), about(0), { allowScale: true, prior: prior(0) });
  if (!found.ok) throw new Error(`expected an alignment, got ${found.error.kind}`);
  const level = template.value.levels[0];
  if (!level) throw new Error('a template has a finest level');
  const mean = (keep: (x: number) => boolean): number => {
    const picked = [...found.value.kept].filter((_, k) => keep(template.value.centroidX + (level.x[k] ?? 0)));
    return picked.reduce((sum, v) => sum + v, 0) / picked.length;
  };
  expect(mean((x) => x > CX - 16)).toBeGreaterThan(0.9);
  expect(mean((x) => x < CX - 20)).toBeLessThan(0.4);
});
