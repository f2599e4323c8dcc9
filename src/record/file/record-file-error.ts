import type { RecordLimit } from './record-limits.ts';

/** Why a file is no record that can be taken in. Nothing of it was used. */
export type RecordFileError =
  /** Something else: another kind of file. */
  | { readonly kind: 'not-a-record' }
  /** A record that was cut or changed on its way; `how` says where that showed. */
  | {
      readonly kind: 'record-damaged';
      readonly how: 'not-zip' | 'part-missing' | 'checksum' | 'not-utf8' | 'not-json';
    }
  /** Of a newer version of the program. */
  | { readonly kind: 'record-newer'; readonly version: number; readonly known: number }
  /** The first thing wrong: `where` as in `sets/0001.json[3].reps[0].peakDeg`, and `what` is wrong there. */
  | { readonly kind: 'record-wrong'; readonly where: string; readonly what: string }
  /** More than any record needs, packed or unpacked; `found` is a lower bound. */
  | { readonly kind: 'record-too-large'; readonly what: RecordLimit; readonly found: number; readonly limit: number }
  /** It is sealed, and no passphrase was given. */
  | { readonly kind: 'record-sealed' }
  /** The passphrase is another one, or somebody has changed the file on purpose: that can't be told apart. */
  | { readonly kind: 'record-passphrase' };
