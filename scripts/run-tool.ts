import { spawn } from 'node:child_process';
import { join } from 'node:path';

const over = new AbortController();

/** Ends the tools that still run. */
export const endTools = (): void => over.abort();

/** `kept`: what it says is given back. `shown`: it speaks for itself. */
type ToolManner = 'kept' | 'shown';

/**
 * Runs a program of node_modules.
 * @param root the project's folder
 * @param script path of the program under node_modules
 * @returns whether it ended well, and what it said where that is kept
 */
export function runTool(
  root: string,
  script: string,
  args: readonly string[],
  manner: ToolManner = 'kept',
): Promise<{ readonly ok: boolean; readonly said: string }> {
  return new Promise((resolve) => {
    const running = spawn(process.execPath, [join(root, 'node_modules', script), ...args], {
      cwd: root,
      stdio: manner === 'shown' ? 'inherit' : ['ignore', 'pipe', 'pipe'],
      signal: over.signal,
    });
    let said = '';
    const hear = (text: string) => {
      said += text;
    };
    running.stdout?.setEncoding('utf8').on('data', hear);
    running.stderr?.setEncoding('utf8').on('data', hear);
    running.on('error', (cause) => resolve({ ok: false, said: `${said}${cause.message}\n` }));
    running.on('close', (code) => resolve({ ok: code === 0, said }));
  });
}
