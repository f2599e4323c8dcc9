import { fail, ok, type Result } from '../result.ts';
import { type Deg, deg, type Px, px, type Ratio, radOfDeg, ratio } from '../units.ts';
import type { PatchTemplate } from './patch-template.ts';
import { aboutPivot, type PlaneMotion } from './plane-motion.ts';
import type { Pyramid, PyramidLevel } from './pyramid.ts';
import { ScoreGrid } from './score-grid.ts';
import { ShiftScorer } from './shift-scorer.ts';
import type { TemplateLevel } from './template-level.ts';

export interface RotationSearchOptions {
  /** Rotations tried: this far to either side of the start, in these steps. */
  readonly rotationRangeDeg: Deg;
  readonly rotationStepDeg: Deg;
  /** Shifts tried: this far to either side of the start along x and y, frame px, in steps of one pixel of the level. */
  readonly shiftRangePx: Px;
  /** Pyramid level searched; the nearest finer one when template or picture lack it. */
  readonly level: number;
  /** Least share of the template's mask inside the picture for a pose to be scored. */
  readonly minInsideShare: Ratio;
}

/** Plus and minus 30 degrees in steps of 3 (a foot's whole travel), 12 px, on the quarter-size picture. Chosen. */
export const ROTATION_SEARCH_DEFAULTS: RotationSearchOptions = {
  rotationRangeDeg: deg(30),
  rotationStepDeg: deg(3),
  shiftRangePx: px(12),
  level: 2,
  minInsideShare: ratio(0.6),
};

export interface ScoredMotion {
  readonly motion: PlaneMotion;
  /** Masked zero-mean normalised cross-correlation on the level searched. */
  readonly zncc: Ratio;
}

export interface RotationSearch {
  /** The best pose, refined between the steps by parabolas; `zncc` is the best score on the grid. */
  readonly best: ScoredMotion;
  /** The best other local maximum; `null` when there is none. One nearly as good as the best means that the best may be wrong. */
  readonly second: ScoredMotion | null;
}

export type RotationSearchError =
  /** No pose tried has enough of the template inside the picture. */
  { readonly kind: 'outside'; readonly neededShare: Ratio };

/**
 * Tries a range of rotations and shifts of a template on a coarse picture: a start for `alignPatch` when the last pose is no guide.
 * @param start middle of the range, about any pivot; its scale is kept
 */
export function searchRotation(
  template: PatchTemplate,
  picture: Pyramid,
  start: PlaneMotion,
  options: Partial<RotationSearchOptions> = {},
): Result<RotationSearch, RotationSearchError> {
  const settings = { ...ROTATION_SEARCH_DEFAULTS, ...options };
  const deepest = Math.min(settings.level, picture.levels.length - 1, template.levels.length - 1);
  const level = template.levels[deepest] as TemplateLevel;
  const pixel = 2 ** level.level;
  const turns = Math.floor(settings.rotationRangeDeg / settings.rotationStepDeg + 1e-9);
  const shifts = Math.ceil(settings.shiftRangePx / pixel);
  const middle = aboutPivot(start, template.centroidX, template.centroidY);
  const centreX = (template.centroidX + middle.shiftX - picture.originX) / pixel;
  const centreY = (template.centroidY + middle.shiftY - picture.originY) / pixel;

  const grid = new ScoreGrid(2 * turns + 1, 2 * shifts + 1, 2 * shifts + 1);
  const scorer = new ShiftScorer(level, (picture.levels[level.level] as PyramidLevel).image);
  for (let a = -turns; a <= turns; a++) {
    const angle = radOfDeg(deg(middle.rotationDeg + a * settings.rotationStepDeg));
    scorer.pose(centreX, centreY, middle.scale * Math.cos(angle), middle.scale * Math.sin(angle));
    for (let y = -shifts; y <= shifts; y++) {
      for (let x = -shifts; x <= shifts; x++) {
        grid.set(a + turns, y + shifts, x + shifts, scorer.zncc(x, y, settings.minInsideShare));
      }
    }
  }
  const [first, second] = grid.twoHighestPeaks();
  if (first === undefined) return fail({ kind: 'outside', neededShare: settings.minInsideShare });
  const scored = (cell: number): ScoredMotion => {
    const [a, y, x] = grid.refined(cell);
    return {
      motion: {
        ...middle,
        rotationDeg: deg(middle.rotationDeg + (a - turns) * settings.rotationStepDeg),
        shiftX: px(middle.shiftX + (x - shifts) * pixel),
        shiftY: px(middle.shiftY + (y - shifts) * pixel),
      },
      zncc: ratio(grid.at(cell)),
    };
  };
  return ok({ best: scored(first), second: second === undefined ? null : scored(second) });
}
