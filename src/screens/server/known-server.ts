/** The address of the FHIR server that whoever serves the page has named in it; null: none, and the page says nothing of servers. */
export function knownServer(): string | null {
  const named = document.querySelector<HTMLMetaElement>('meta[name="evenside-fhir-server"]')?.content.trim();
  return named ? named.replace(/\/+$/, '') : null;
}
