import { deflateSync, inflateSync } from 'fflate';
import { fail, ok, type Result } from '../result.ts';
import { crc32 } from './crc32.ts';
import { PLAN_DICTIONARY } from './plan-dictionary.ts';
import { PLAN_LIMITS, type PlanError } from './plan-error.ts';

/** Of the packing, not of what is packed. Later versions keep the first five bytes as they are here, so that this one knows them as later. */
const CODE_VERSION = 1;
/** One byte of version, four of the CRC-32 of all others, most significant first. */
const HEAD_BYTES = 5;
const dictionary = new TextEncoder().encode(PLAN_DICTIONARY);

const checksumOf = (version: number, packed: Uint8Array): number => crc32(Uint8Array.of(version, ...packed));

const toBase64url = (bytes: Uint8Array): string =>
  btoa(String.fromCharCode(...bytes))
    .replaceAll('+', '-')
    .replaceAll('/', '_')
    .replaceAll('=', '');

/** Null when it is none: another character, or a length that no bytes give. */
function fromBase64url(code: string): Uint8Array | null {
  if (!/^[A-Za-z0-9_-]*$/.test(code) || code.length % 4 === 1) return null;
  return Uint8Array.from(atob(code.replaceAll('-', '+').replaceAll('_', '/')), (character) => character.charCodeAt(0));
}

/**
 * Packs a text for an address: deflate (RFC 1951) against `PLAN_DICTIONARY`, with version and checksum before it, in base64url (RFC 4648, no padding).
 * docs/plan-format.md has the bytes.
 */
export function packed(text: string): Result<string, PlanError> {
  const bytes = new TextEncoder().encode(text);
  const { inflatedBytes, codeCharacters: limit } = PLAN_LIMITS;
  if (bytes.length > inflatedBytes)
    return fail({ kind: 'plan-too-large', what: 'inflatedBytes', found: bytes.length, limit: inflatedBytes });
  const deflated = deflateSync(bytes, { level: 9, dictionary });
  const found = Math.ceil(((deflated.length + HEAD_BYTES) * 4) / 3);
  if (found > limit) return fail({ kind: 'plan-too-large', what: 'codeCharacters', found, limit });
  const head = new Uint8Array(HEAD_BYTES);
  head[0] = CODE_VERSION;
  new DataView(head.buffer).setUint32(1, checksumOf(CODE_VERSION, deflated));
  return ok(toBase64url(Uint8Array.of(...head, ...deflated)));
}

/** Null when they are no deflate stream. @param most bytes; what comes after them is not given back */
function inflated(bytes: Uint8Array, most: number): Uint8Array | null {
  try {
    return inflateSync(bytes, { out: new Uint8Array(most), dictionary });
  } catch {
    return null;
  }
}

/** Unpacks a code; whatever was cut off or changed on its way is found by its checksum. */
export function unpacked(code: string): Result<string, PlanError> {
  const { codeCharacters, inflatedBytes: limit } = PLAN_LIMITS;
  if (code.length > codeCharacters)
    return fail({ kind: 'plan-too-large', what: 'codeCharacters', found: code.length, limit: codeCharacters });
  const bytes = fromBase64url(code);
  if (!bytes) return fail({ kind: 'plan-damaged', how: 'not-base64url' });
  const version = bytes[0];
  if (version === undefined || bytes.length <= HEAD_BYTES) return fail({ kind: 'plan-damaged', how: 'cut-short' });
  const content = bytes.subarray(HEAD_BYTES);
  const checksum = new DataView(bytes.buffer, bytes.byteOffset).getUint32(1);
  if (checksumOf(version, content) !== checksum) return fail({ kind: 'plan-damaged', how: 'checksum' });
  if (version > CODE_VERSION) return fail({ kind: 'plan-newer', version, known: CODE_VERSION });
  // One byte more than is allowed, to tell "just as much" from "more".
  const found = version === CODE_VERSION ? inflated(content, limit + 1) : null;
  if (!found) return fail({ kind: 'plan-damaged', how: 'not-deflate' });
  if (found.length > limit) return fail({ kind: 'plan-too-large', what: 'inflatedBytes', found: found.length, limit });
  try {
    return ok(new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(found));
  } catch {
    return fail({ kind: 'plan-damaged', how: 'not-utf8' });
  }
}
