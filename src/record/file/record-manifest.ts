import * as v from 'valibot';
import { NONCE_BYTES } from '../lock/key-sizes.ts';
import { SALT_BYTES } from '../lock/lock-row.ts';
import { ROUNDS_ASKED } from '../lock/rounds.ts';
import { LONGEST_NAME } from '../person.ts';
import { idShape, momentShape, oneOf, wholeShape } from '../shape.ts';

/** Raised by one whenever a reader of before would misread what is written. 2: the diary may say what was removed. */
export const RECORD_VERSION = 2;
/** What is written where nothing was removed, so that a reader of before can read it. */
export const FIRST_VERSION = 1;
const versionShape = v.picklist([FIRST_VERSION, RECORD_VERSION]);

export const MANIFEST = 'manifest.json';
export const HEADER = 'header.json';
export const SEALED = 'sealed.bin';
export const SEALED_SUM = 'sealed.sha256';

/** Most ids that one record has: a new one each time somebody starts anew before they take their record along. Chosen. */
const MOST_IDS = 50;

const partShape = v.strictObject({
  name: v.pipe(v.string(), v.regex(/^(sets|diary)\/\d{4}\.json$/, 'must be the name of a part')),
  /** Unpacked. */
  bytes: wholeShape,
  sha256: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, 'must be 64 hexadecimal digits')),
  /** How many sets or entries it has. */
  count: wholeShape,
});

/** What a record says of itself. */
export const manifestShape = v.strictObject({
  evenside: v.literal('record'),
  version: versionShape,
  createdAt: momentShape,
  person: v.strictObject({
    /** Random; the same in every file of this person, so that a newer one is known as theirs. */
    ids: v.pipe(v.array(idShape), v.minLength(1), v.maxLength(MOST_IDS)),
    /** Null unless the sender gave one. */
    name: v.nullable(v.pipe(v.string(), v.trim(), v.minLength(1), v.maxLength(LONGEST_NAME))),
    affectedSide: v.nullable(oneOf({ left: true, right: true, both: true })),
  }),
  counts: v.strictObject({ sets: wholeShape, edits: wholeShape, entries: wholeShape }),
  parts: v.array(partShape),
});
export type RecordManifest = v.InferOutput<typeof manifestShape>;
export type RecordPart = RecordManifest['parts'][number];

const base64Of = (bytes: number) =>
  v.pipe(
    v.string(),
    v.base64('must be base64'),
    v.check((text) => atob(text).length === bytes, `must be ${bytes} bytes`),
  );

/** What can be read of a sealed record without its passphrase. */
export const headerShape = v.strictObject({
  evenside: v.literal('record'),
  version: v.literal(FIRST_VERSION),
  sealed: v.strictObject({
    kdf: v.literal('PBKDF2'),
    hash: v.literal('SHA-256'),
    rounds: v.pipe(wholeShape, v.minValue(ROUNDS_ASKED.least), v.maxValue(ROUNDS_ASKED.most)),
    salt: base64Of(SALT_BYTES),
    cipher: v.literal('AES-256-GCM'),
    iv: base64Of(NONCE_BYTES),
  }),
});
export type RecordHeader = v.InferOutput<typeof headerShape>;
