import { isObject } from './is-object.ts';

/** From database version 7 to 8: results say what foot and head did together. Before, no exercise had both. */

/** A row of `results`. What does not look like one is left as it is: reading it says what is wrong with it. */
export const withGlideRow = (row: unknown): unknown =>
  isObject(row) && 'result' in row && isObject(row.result) && !('glide' in row.result)
    ? { ...row, result: { ...row.result, glide: null } }
    : row;
