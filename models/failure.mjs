import { isAbsolute, relative, sep } from 'node:path';

/**
 * Everything that can go wrong while the bundles are made and is not a bug, and the sentence a person reads for it.
 *
 * @typedef {{ readonly kind: 'parts-missing', readonly folder: string }
 *   | { readonly kind: 'part-missing', readonly path: string }
 *   | { readonly kind: 'part-unreadable', readonly path: string, readonly reason: string }
 *   | { readonly kind: 'part-damaged', readonly path: string, readonly reason: string }
 *   | { readonly kind: 'not-a-model', readonly path: string, readonly reason: string }
 *   | { readonly kind: 'bundle-differs', readonly file: string, readonly got: string, readonly expected: string }
 *   | { readonly kind: 'manifest-unusable', readonly path: string, readonly reason: string }
 *   | { readonly kind: 'unwritable', readonly path: string, readonly reason: string }} Failure
 */

/**
 * @template T
 * @typedef {import('../src/result.ts').Result<T, Failure>} Outcome
 */

const REGENERATE = 'node models/assemble.mjs --write-manifest';

/**
 * @param {Failure} failure
 * @returns {string} one sentence: what is wrong and what to do
 */
export const explain = (failure) => {
  switch (failure.kind) {
    case 'parts-missing':
      return `The pose model parts are not installed (there is no folder ${shownPath(failure.folder)}): run npm ci again.`;
    case 'part-missing':
      return `The pose model part ${shownPath(failure.path)} is missing: run npm ci again.`;
    case 'part-unreadable':
      return `The pose model part ${shownPath(failure.path)} cannot be read (${failure.reason}): check its permissions or run npm ci again.`;
    case 'part-damaged':
      return `The pose model part ${shownPath(failure.path)} is damaged (${failure.reason}): run npm ci again.`;
    case 'not-a-model':
      return `${shownPath(failure.path)} is not a model that a bundle can hold (${failure.reason}): run npm ci again.`;
    case 'bundle-differs':
      return (
        `The assembled ${failure.file} is not the one models/manifest.json describes (SHA-256 ${failure.got}, expected ` +
        `${failure.expected}): run npm ci again, and if the change was meant, run ${REGENERATE}.`
      );
    case 'manifest-unusable':
      return `The manifest ${shownPath(failure.path)} cannot be used (${failure.reason}): restore it with git, or run ${REGENERATE}.`;
    case 'unwritable':
      return `${shownPath(failure.path)} cannot be written (${failure.reason}): free some space or check the permissions, then run this again.`;
    default:
      return failure;
  }
};

/**
 * @param {string} path
 * @returns {string} as seen from the working folder when it lies in there, else as it is
 */
export const shownPath = (path) => {
  const seen = relative(process.cwd(), path);
  return seen === '' || seen === '..' || seen.startsWith(`..${sep}`) || isAbsolute(seen) ? path : seen;
};

/**
 * @param {unknown} error as thrown by node:fs
 * @returns {string} the system's code such as ENOENT; anything without one is a bug and is thrown on
 */
export const systemCode = (error) => {
  if (error instanceof Error && 'code' in error && typeof error.code === 'string') return error.code;
  throw error;
};
