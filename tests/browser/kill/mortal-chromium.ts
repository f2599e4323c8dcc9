import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { type Browser, chromium, type Page } from 'playwright-core';

/** A Chromium of its own process group, with a profile that outlives it. */
export interface MortalChromium {
  readonly page: Page;
  /** Ends every one of its processes at once, as a power cut would; nothing is asked, nothing is written. Resolves when it is gone. */
  readonly kill: () => Promise<void>;
}

const ARGS = [
  '--headless=new',
  '--remote-debugging-port=0',
  '--no-first-run',
  '--no-default-browser-check',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-extensions',
  '--disable-gpu',
  '--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1',
];

function addressOf(child: ChildProcess): Promise<string> {
  return new Promise((resolve, reject) => {
    let said = '';
    child.stderr?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const address = /ws:\/\/127\.0\.0\.1:\d+\/\S+/.exec(said)?.[0];
      if (address) resolve(address);
    });
    child.once('exit', () => reject(new Error(`Chromium ended before it could be talked to: ${said.slice(-500)}`)));
  });
}

/**
 * @param profile folder of its data
 * @param args further ones, such as its camera
 */
export async function mortalChromium(executable: string, profile: string, args: readonly string[] = []): Promise<MortalChromium> {
  const sandbox = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  const child = spawn(executable, [...ARGS, ...sandbox, ...args, `--user-data-dir=${profile}`, 'about:blank'], {
    detached: true,
    stdio: ['ignore', 'ignore', 'pipe'],
  });
  const gone = once(child, 'exit');
  const { pid } = child;
  if (pid === undefined) throw new Error(`mortalChromium requires a browser that starts, got ${executable}`);
  let browser: Browser | null = null;
  const kill = async () => {
    // The group, so that no process of it writes on.
    if (child.exitCode === null && child.signalCode === null) process.kill(-pid, 'SIGKILL');
    await gone;
    await browser?.close().catch(() => undefined);
  };
  try {
    browser = await chromium.connectOverCDP(await addressOf(child));
    const context = browser.contexts()[0];
    const page = context?.pages()[0] ?? (await context?.newPage());
    if (!page) throw new Error('mortalChromium requires a browser with a page, got none');
    return { page, kill };
  } catch (cause) {
    await kill();
    throw cause;
  }
}
