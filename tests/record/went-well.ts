import type { Result } from '../../src/result.ts';

/** The value of something that should have gone well. */
export function wentWell<T>(result: Result<T, { readonly kind: string }>): T {
  if (!result.ok) throw new Error(`expected a value, got ${JSON.stringify(result.error)}`);
  return result.value;
}
