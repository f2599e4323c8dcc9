/** An address of another host as it stands in a file: http, https, ws or wss, and the host. */
const ADDRESS = /\b(?:https?|wss?):\/\/[a-z0-9[](?:(?!["'`<>\\)}\],;])[!-~])*/gi;

/** An address that may stand in the built site, and why: it is a name or a text, never asked for. */
export interface AllowedAddress {
  readonly begins: string;
  readonly why: string;
}

/**
 * Every address in the text of built scripts and WebAssembly that is not allowed.
 * @returns each once, as "file: address"
 */
export function strangeAddresses(files: ReadonlyMap<string, string>, allowed: readonly AllowedAddress[]): readonly string[] {
  const strange = new Set<string>();
  for (const [name, text] of files)
    for (const [address] of text.matchAll(ADDRESS))
      if (!allowed.some(({ begins }) => address.startsWith(begins))) strange.add(`${name}: ${address}`);
  return [...strange].sort();
}
