/** A request of the engine: always FHIR as JSON. */
export interface HttpRequest {
  readonly method: 'GET' | 'POST';
  readonly headers: Readonly<Record<string, string>>;
  readonly body?: string;
}

/** What the engine needs of an answer. */
export interface HttpAnswer {
  readonly status: number;
  readonly headers: { readonly get: (name: string) => string | null };
  readonly text: () => Promise<string>;
}

/** Asks an address; the browser's `fetch` is one. Rejects when no whole answer came. */
export type Http = (url: string, request: HttpRequest) => Promise<HttpAnswer>;

/** What is needed of the surroundings, so that the engine has no clock, chance or network of its own. */
export interface Surroundings {
  readonly http: Http;
  /** ms since 1970, UTC. */
  readonly nowMs: () => number;
  /** In [0, 1). */
  readonly chance: () => number;
  /** Resolves after some ms. */
  readonly wait: (ms: number) => Promise<void>;
  /** A new UUID. */
  readonly newId: () => string;
}
