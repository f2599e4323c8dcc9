/** Bytes at a time: more arguments than a call bears would fail. */
const CHUNK = 0x2000;

/** Base64 with padding (RFC 4648), as FHIR has it. */
export function toBase64(bytes: Uint8Array): string {
  let text = '';
  for (let start = 0; start < bytes.length; start += CHUNK) text += String.fromCharCode(...bytes.subarray(start, start + CHUNK));
  return btoa(text);
}

/** Null when the text is none. FHIR allows blanks in it. */
export function fromBase64(text: string): Uint8Array | null {
  try {
    return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
  } catch {
    return null;
  }
}
