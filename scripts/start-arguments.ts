import { parseArgs } from 'node:util';
import { fail, ok, type Result } from '../src/result.ts';

const USAGE = 'npm start [-- --port N]';

/** `words`: what is wrong and how to ask for it, for a line of its own. */
export type ArgumentError = { readonly kind: 'bad-arguments'; readonly words: string };

/** Reads the words after `npm start --`. @returns the port asked for, or null when none was */
export function portOf(args: readonly string[]): Result<number | null, ArgumentError> {
  let port: string | undefined;
  try {
    port = parseArgs({ args: [...args], options: { port: { type: 'string' } } }).values.port;
  } catch (cause) {
    const reason = cause instanceof Error ? (cause.message.split('. ')[0] ?? '') : String(cause);
    return fail({ kind: 'bad-arguments', words: `${reason}. Use it as: ${USAGE}` });
  }
  if (port === undefined) return ok(null);
  const number = /^\d{1,5}$/.test(port) ? Number(port) : Number.NaN;
  if (number >= 1 && number <= 65535) return ok(number);
  return fail({
    kind: 'bad-arguments',
    words: `The port must be a whole number from 1 to 65535, not "${port}". Use it as: ${USAGE}`,
  });
}
