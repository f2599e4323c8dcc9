import { spawn } from 'node:child_process';
import * as v from 'valibot';

/** How bad a known vulnerability is, as the registry calls it. */
const SEVERITIES = ['info', 'low', 'moderate', 'high', 'critical'] as const;
type Severity = (typeof SEVERITIES)[number];
/** From here on it stops the tests. Chosen: a lower one is told. */
const STOPS: Severity = 'high';

const reportShape = v.object({
  vulnerabilities: v.record(
    v.string(),
    v.object({ name: v.string(), severity: v.picklist(SEVERITIES), range: v.string(), isDirect: v.boolean() }),
  ),
});

/** What the registry knows of the installed packages; `not-asked`: it could not be reached, or gives no answer to this question. */
export type Advisories =
  | { readonly kind: 'answered'; readonly stops: readonly string[]; readonly told: readonly string[] }
  | { readonly kind: 'not-asked'; readonly why: string };

/** Reads what `npm audit --json` has printed. */
export function advisoriesIn(printed: string): Advisories {
  let value: unknown;
  try {
    value = JSON.parse(printed);
  } catch {
    return { kind: 'not-asked', why: 'npm audit printed no answer' };
  }
  const report = v.safeParse(reportShape, value);
  if (!report.success) {
    const message = v.safeParse(v.object({ message: v.string() }), value);
    return { kind: 'not-asked', why: message.success ? 'the registry refused the question' : 'npm audit printed something else' };
  }
  const lines = Object.values(report.output.vulnerabilities).map(({ name, severity, range, isDirect }) => ({
    severity,
    words: `${name} ${range}: ${severity}${isDirect ? '' : ', through another package'}`,
  }));
  const isStop = ({ severity }: { readonly severity: Severity }) => SEVERITIES.indexOf(severity) >= SEVERITIES.indexOf(STOPS);
  return {
    kind: 'answered',
    stops: lines.filter(isStop).map(({ words }) => words),
    told: lines.filter((line) => !isStop(line)).map(({ words }) => words),
  };
}

/** Asks the registry, through npm, about what the built site is made from: a fault of a tool must not stop somebody who only wants to use the program. */
export function askAdvisories(root: string): Promise<Advisories> {
  return new Promise((resolve) => {
    const npm = spawn('npm', ['audit', '--json', '--omit=dev'], { cwd: root, stdio: ['ignore', 'pipe', 'ignore'] });
    let printed = '';
    npm.stdout.on('data', (chunk: Buffer) => {
      printed += chunk.toString();
    });
    npm.on('error', () => resolve({ kind: 'not-asked', why: 'npm could not be started' }));
    npm.on('close', () => resolve(advisoriesIn(printed)));
  });
}
