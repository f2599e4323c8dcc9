import { distance, type Spot } from './rgba-picture.ts';

/** Three stickers of a lower leg by their places on it. */
export interface AnkleOrder<T> {
  readonly shin: T;
  readonly ankle: T;
  readonly forefoot: T;
}

/** Which of three dots on a sitting person's lower leg is which: the shin's is the highest, the ankle's the one nearer to it. */
export function arrangeAnkle<T extends { readonly at: Spot }>(three: readonly [T, T, T]): AnkleOrder<T> {
  const [shin, p, q] = [...three].sort((a, b) => a.at.y - b.at.y) as [T, T, T];
  return distance(shin.at, p.at) <= distance(shin.at, q.at) ? { shin, ankle: p, forefoot: q } : { shin, ankle: q, forefoot: p };
}
