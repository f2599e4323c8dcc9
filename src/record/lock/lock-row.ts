import * as v from 'valibot';
import { wholeShape } from '../shape.ts';
import { NONCE_BYTES } from './key-sizes.ts';
import { LOCK_ID } from './lock-place.ts';
import { ROUNDS_ASKED } from './rounds.ts';

/** Bytes of the salt. NIST SP 800-132, 5.1 (from memory): at least 16. */
export const SALT_BYTES = 16;

const bytesOf = (least: number, most: number) =>
  v.pipe(
    v.instance(Uint8Array),
    v.check(({ length }) => length >= least && length <= most, `must have ${least} to ${most} bytes`),
  );

/** What the rows' key is opened with. It holds neither the passphrase nor that key in a readable form. */
export const lockRowShape = v.strictObject({
  id: v.literal(LOCK_ID),
  schema: v.literal(1),
  kdf: v.strictObject({
    name: v.literal('PBKDF2'),
    hash: v.literal('SHA-256'),
    rounds: v.pipe(wholeShape, v.minValue(ROUNDS_ASKED.least), v.maxValue(ROUNDS_ASKED.most)),
    salt: bytesOf(SALT_BYTES, 64),
  }),
  /** The key, sealed with AES-256-GCM under what the passphrase gives. */
  wrapped: v.strictObject({ iv: bytesOf(NONCE_BYTES, NONCE_BYTES), bytes: bytesOf(48, 48) }),
  /** `sealing` and `unsealing`: rows of both kinds are there until it is done. */
  state: v.picklist(['sealing', 'on', 'unsealing']),
  /** Version of the database in whose shape every sealed row is, once the state is `on`. */
  version: v.pipe(wholeShape, v.minValue(1)),
});

export type LockRow = Readonly<v.InferOutput<typeof lockRowShape>>;
