/** Why somebody is not signed in. `detail`: the server's own words, possibly none. */
export type SignInError =
  /** No answer came from where sign-in is told of, or from where tokens are given. */
  | { readonly kind: 'unreachable' }
  /** The server does not offer the sign-in that we know. `missing`: what of it, by its name in SMART App Launch 2.2. */
  | { readonly kind: 'not-offered'; readonly missing: string }
  /** Tokens are given at an origin that whoever serves the page has not named. */
  | { readonly kind: 'other-origin'; readonly origin: string }
  /** The person, or the server, said no. */
  | { readonly kind: 'denied' }
  /** An answer to a question that this page did not ask, or not lately. */
  | { readonly kind: 'not-asked' }
  /** What was to be exchanged for a token is too old, or was used before. */
  | { readonly kind: 'too-late' }
  /** Nobody was named whose records these are. */
  | { readonly kind: 'no-patient' }
  /** Somebody else signed in than the records here are connected to. */
  | { readonly kind: 'somebody-else' }
  /** Any other refusal. */
  | { readonly kind: 'refused'; readonly detail: string };
