/** The FHIR server that whoever serves the page has named in it. */
export interface KnownServer {
  /** Address of its FHIR base, without a slash at its end. */
  readonly base: string;
  /** How this page is registered there; null: an open server, without sign-in. */
  readonly clientId: string | null;
  /** Origins besides the server's own that may be asked for tokens. */
  readonly signIn: readonly string[];
}

const named = (name: string): string => document.querySelector<HTMLMetaElement>(`meta[name="${name}"]`)?.content.trim() ?? '';

/** Null: none was named, and the page says nothing of servers. */
export function knownServer(): KnownServer | null {
  const base = named('evenside-fhir-server').replace(/\/+$/, '');
  if (base === '') return null;
  const signIn = named('evenside-sign-in').split(' ');
  return { base, clientId: named('evenside-fhir-client') || null, signIn: signIn.filter((origin) => origin !== '') };
}
