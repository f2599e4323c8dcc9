import { mean, sum } from 'simple-statistics';
import { fail, ok, type Result } from '../result.ts';

/** The mean squares of a two-way table of ratings, in the squared unit of the ratings; the names are those of Shrout and Fleiss. */
export interface MeanSquares {
  readonly subjects: number;
  readonly raters: number;
  /** BMS: between subjects, n - 1 degrees of freedom. */
  readonly between: number;
  /** JMS: between raters, k - 1. */
  readonly betweenRaters: number;
  /** EMS: what is left, (n - 1) (k - 1). */
  readonly residual: number;
}

export type RatingsError =
  | { readonly kind: 'too-few-subjects'; readonly found: number; readonly needed: number }
  | { readonly kind: 'too-few-raters'; readonly found: number; readonly needed: number }
  /** A subject that not every rater rated, or whose rating is no number; counted from 0. */
  | { readonly kind: 'incomplete-subject'; readonly subject: number };

/** Below two, nothing varies. */
const LEAST = 2;

/**
 * Analysis of variance without replication, as intraclass correlations ask for it.
 * @param ratings one row a subject, one column a rater (or a session)
 * Source: Shrout PE, Fleiss JL 1979, Psychol Bull 86:420-428.
 */
export function meanSquares(ratings: readonly (readonly number[])[]): Result<MeanSquares, RatingsError> {
  const n = ratings.length;
  const k = ratings[0]?.length ?? 0;
  if (n < LEAST) return fail({ kind: 'too-few-subjects', found: n, needed: LEAST });
  if (k < LEAST) return fail({ kind: 'too-few-raters', found: k, needed: LEAST });
  const broken = ratings.findIndex((row) => row.length !== k || !row.every(Number.isFinite));
  if (broken >= 0) return fail({ kind: 'incomplete-subject', subject: broken });
  const ofSubject = ratings.map((row) => mean([...row]));
  const ofRater = Array.from({ length: k }, (_, j) => mean(ratings.map((row) => row[j] as number)));
  const all = mean(ofSubject);
  const squares = (values: readonly number[]) => sum(values.map((v) => v ** 2));
  const between = k * squares(ofSubject.map((m) => m - all));
  const betweenRaters = n * squares(ofRater.map((m) => m - all));
  const left = squares(
    ratings.flatMap((row, i) => row.map((x, j) => x - (ofSubject[i] as number) - (ofRater[j] as number) + all)),
  );
  return ok({
    subjects: n,
    raters: k,
    between: between / (n - 1),
    betweenRaters: betweenRaters / (k - 1),
    residual: left / ((n - 1) * (k - 1)),
  });
}
