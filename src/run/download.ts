import { fail, ok, type Result } from '../result.ts';
import { type Ratio, ratio } from '../units.ts';

/** Why a file did not come: the server does not have it, or the way to it broke off again and again. */
export type DownloadError = { readonly kind: 'missing' } | { readonly kind: 'broken-off' };

export interface Download {
  readonly url: URL;
  /** How long the file is, bytes. */
  readonly bytes: number;
  /** Share of the bytes so far, 0 to 1; falls back where a server begins anew. */
  readonly onProgress: (share: Ratio) => void;
  /** True: past the browser's own cache, which may hold what was wrong. */
  readonly anew?: boolean;
}

export interface DownloadNeeds {
  readonly fetch: (url: URL, init: RequestInit) => Promise<Response>;
  readonly sleep: (ms: number) => Promise<void>;
}

/** How often in a row nothing new may come before it is given up. Chosen: with the waits below, seven seconds. */
const TRIES = 4;
/** The wait after a cut, ms; after each further one without anything new it is twice as long. Chosen. */
const FIRST_WAIT_MS = 500;

/** Server's faults that pass by themselves: overload, a restart behind a proxy. */
const passes = (status: number): boolean => status === 429 || status >= 500;

/** Where the bytes of an answer begin in the file; null: it is no answer to what was asked. */
function startOf(answer: Response, asked: number): number | null {
  if (answer.status === 200) return 0;
  const from = /^bytes (\d+)-/.exec(answer.headers.get('content-range') ?? '')?.[1];
  return answer.status === 206 && Number(from) === asked ? asked : null;
}

/** What says that it is still the same file: a strong tag, or when it was changed; a weak tag may stand for other bytes. */
function versionOf({ headers }: Response): string | null {
  const tag = headers.get('etag');
  return tag && !tag.startsWith('W/') ? tag : headers.get('last-modified');
}

const HERE: DownloadNeeds = {
  fetch: (url, init) => fetch(url, init),
  sleep: (ms) => new Promise((resolve) => setTimeout(resolve, ms)),
};

/**
 * Fetches a file whose length is known. After a cut it goes on from the byte where it broke off if the server can (HTTP Range, of the same version), else
 * from the start, after a wait that grows.
 * @returns never more than `bytes`; whether they are the right ones is for the caller to check
 */
export async function download(
  { url, bytes, onProgress, anew = false }: Download,
  { fetch, sleep }: DownloadNeeds = HERE,
): Promise<Result<Uint8Array<ArrayBuffer>, DownloadError>> {
  const whole = new Uint8Array(bytes);
  let got = 0;
  let version: string | null = null;
  let most = 0;
  for (let idle = 0; idle < TRIES; ) {
    try {
      const range = got > 0 ? { headers: { Range: `bytes=${got}-`, ...(version ? { 'If-Range': version } : {}) } } : {};
      const answer = await fetch(url, { ...range, ...(anew ? { cache: 'reload' } : {}) });
      const start = startOf(answer, got);
      if (start === null && !passes(answer.status) && answer.status !== 416) return fail({ kind: 'missing' });
      // What lies beyond the end is not asked for again: the file on the server is another one now.
      if (answer.status === 416) got = 0;
      if (start !== null && answer.body) {
        got = start;
        version = versionOf(answer);
        for await (const part of answer.body) {
          const fits = part.subarray(0, bytes - got);
          whole.set(fits, got);
          got += fits.length;
          onProgress(ratio(got / bytes));
          if (got === bytes) break;
        }
      }
    } catch {
      // Cut off: the next try goes on from here.
    }
    if (got === bytes) return ok(whole);
    idle = got > most ? 0 : idle + 1;
    most = Math.max(most, got);
    if (idle < TRIES) await sleep(FIRST_WAIT_MS * 2 ** idle);
  }
  return fail({ kind: 'broken-off' });
}
