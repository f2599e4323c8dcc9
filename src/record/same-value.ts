/** Whether two values of plain data (JSON) are the same, whatever the order of their keys. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const [left, right] = [new Map(Object.entries(a)), new Map(Object.entries(b))];
  return left.size === right.size && [...left].every(([key, value]) => right.has(key) && sameValue(value, right.get(key)));
}
