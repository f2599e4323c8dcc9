import { fail, ok, type Result } from '../result.ts';
import type { MeanSquares } from './mean-squares.ts';

/**
 * The forms for one rating by raters who all rate everybody. 2,1: the raters stand for others like them (absolute agreement), which a camera against a goniometer, or one
 * day against another, asks for (Weir 2005, J Strength Cond Res 19:231). 3,1: these raters only (consistency: one who always reads 3 degrees more does no harm).
 */
export type IccForm = '2,1' | '3,1';

export interface NoVariance {
  readonly kind: 'no-variance';
}

/**
 * Intraclass correlation: the share of the variance that is between subjects. At most 1; below 0 when subjects differ less than their own ratings do.
 * @returns `no-variance` when all ratings are alike, so that there is no share to speak of
 * Source: Shrout PE, Fleiss JL 1979, Psychol Bull 86:420-428.
 */
export function intraclassCorrelation(squares: MeanSquares, form: IccForm): Result<number, NoVariance> {
  const [signal, all] = shareOf(squares, form);
  return all > 0 ? ok(signal / all) : fail({ kind: 'no-variance' });
}

function shareOf({ subjects: n, raters: k, between, betweenRaters, residual }: MeanSquares, form: IccForm) {
  switch (form) {
    case '2,1':
      return [between - residual, between + (k - 1) * residual + (k * (betweenRaters - residual)) / n] as const;
    case '3,1':
      return [between - residual, between + (k - 1) * residual] as const;
    default:
      return form satisfies never;
  }
}
