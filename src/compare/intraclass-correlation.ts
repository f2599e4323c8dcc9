import { fail, ok, type Result } from '../result.ts';
import type { MeanSquares } from './mean-squares.ts';

/**
 * The six forms. The first figure: 1 each subject has raters of its own, 2 the raters stand for others like them (absolute agreement),
 * 3 these raters only (consistency: a rater who always reads 3 degrees more does no harm). The second: one rating, or the mean of all k.
 * A camera against a goniometer, or one day against another, is '2,1' (Weir 2005, J Strength Cond Res 19:231).
 */
export type IccForm = '1,1' | '2,1' | '3,1' | '1,k' | '2,k' | '3,k';

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

function shareOf({ subjects: n, raters: k, between, within, betweenRaters, residual }: MeanSquares, form: IccForm) {
  switch (form) {
    case '1,1':
      return [between - within, between + (k - 1) * within] as const;
    case '2,1':
      return [between - residual, between + (k - 1) * residual + (k * (betweenRaters - residual)) / n] as const;
    case '3,1':
      return [between - residual, between + (k - 1) * residual] as const;
    case '1,k':
      return [between - within, between] as const;
    case '2,k':
      return [between - residual, between + (betweenRaters - residual) / n] as const;
    case '3,k':
      return [between - residual, between] as const;
    default:
      return form satisfies never;
  }
}
