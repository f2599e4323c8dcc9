/** Why a server did not do what it was asked. `detail`: the server's own words, possibly none. */
export type ServerError =
  /** No whole answer came: no network, or it was cut; perhaps the server did it all the same. */
  | { readonly kind: 'unreachable' }
  /** 401, 403. */
  | { readonly kind: 'not-allowed'; readonly status: number }
  /** Nobody is signed in, or no longer. */
  | { readonly kind: 'signed-out' }
  /** 429. `afterMs`: how long the server asks to wait; null when it does not say. */
  | { readonly kind: 'busy'; readonly afterMs: number | null }
  /** 409: somebody else wrote at the same moment. */
  | { readonly kind: 'at-once' }
  /** 412: a condition does not hold, for instance because something is there twice. */
  | { readonly kind: 'condition'; readonly detail: string }
  /** 408, 5xx. */
  | { readonly kind: 'failed'; readonly status: number; readonly afterMs: number | null }
  /** 413. */
  | { readonly kind: 'too-large' }
  /** 404, 410. */
  | { readonly kind: 'not-there' }
  /** Any other status: it does not want this. */
  | { readonly kind: 'refused'; readonly status: number; readonly detail: string }
  /** Not the FHIR that was asked for. */
  | { readonly kind: 'not-fhir' };

/** Whether asking once more may help. */
export const isPassing = ({ kind }: ServerError): boolean =>
  kind === 'unreachable' || kind === 'busy' || kind === 'at-once' || kind === 'failed';

/** Whether the server dislikes what was sent, rather than the moment or the sender: something in it may be to blame. */
export const isAboutContent = ({ kind }: ServerError): boolean =>
  kind === 'refused' || kind === 'condition' || kind === 'too-large';
