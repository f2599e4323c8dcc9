import type { Result } from '../result.ts';
import type { StoreError } from './store-error.ts';

/** Runs a database call; what it throws becomes a typed failure. */
export type Attempt = <T, E extends { readonly kind: string }>(
  call: () => PromiseLike<Result<T, E>>,
) => Promise<Result<T, E | StoreError>>;
