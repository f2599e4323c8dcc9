/** Index of the first item whose time is not before `t`, the list's length when there is none. @param list in order of time */
export function firstAtLeast<T>(list: readonly T[], t: number, timeOf: (item: T) => number): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (timeOf(list[middle] as T) < t) low = middle + 1;
    else high = middle;
  }
  return low;
}
