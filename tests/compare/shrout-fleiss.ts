/** Shrout and Fleiss 1979, Psychol Bull 86:420-428, table 2: six targets (rows) rated by four judges. */
export const SHROUT_FLEISS = [
  [9, 2, 5, 8],
  [6, 1, 3, 2],
  [8, 4, 6, 8],
  [7, 1, 2, 6],
  [10, 5, 6, 9],
  [6, 2, 4, 7],
] as const;
