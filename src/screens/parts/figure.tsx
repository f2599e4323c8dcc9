import type { ReactNode } from 'react';

/** Numbers that belong together, such as 7.4° ± 1.5°: they stay in this order in a language that is read from right to left too. */
export const Figure = ({ children }: { readonly children: ReactNode }) => <bdi dir="ltr">{children}</bdi>;

/** A cell of a table as it is shown: what has no letter in it is a figure. */
export const shownCell = (cell: ReactNode): ReactNode =>
  typeof cell === 'string' && cell !== '' && !/\p{L}/u.test(cell) ? <Figure>{cell}</Figure> : cell;
