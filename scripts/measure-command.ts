import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import type { ExerciseId } from '../src/exercises/exercise.ts';
import type { Side } from '../src/pose/landmarks.ts';
import type { PoseModel } from '../src/pose/model.ts';
import { fail, ok, type Result } from '../src/result.ts';

/** What `npm run measure` is asked to watch. */
export interface WatchRequest {
  readonly clip: string;
  readonly exercise: ExerciseId;
  readonly side: Side;
  readonly model: PoseModel;
  /** Further words of the command line. */
  readonly more?: readonly string[];
}

export interface CommandFailure {
  /** `nothing-seen`: it was watched, and there is no recording. */
  readonly kind: 'measure-failed' | 'nothing-seen';
  /** The command's own last line. */
  readonly words: string;
}

/** Its exit code when the clip was watched and nothing measurable was in it: there is a recording all the same. */
const NOTHING_SEEN = 3;

/**
 * Makes a landmark recording of a video with the project's own command line, in a process of its own.
 * @param root the project's folder
 * @param out path of the recording to write
 */
export function recordClip(root: string, request: WatchRequest, out: string): Promise<Result<null, CommandFailure>> {
  const { clip, exercise, side, model, more = [] } = request;
  const words = [clip, '--exercise', exercise, '--side', side, '--model', model, '--landmarks', out, ...more];
  const args = ['--import', 'tsx', join(root, 'src/cli/main.ts'), ...words];
  return new Promise((resolve, reject) => {
    const command = spawn(process.execPath, args, { cwd: root, stdio: ['ignore', 'ignore', 'pipe'] });
    let said = '';
    command.stderr.setEncoding('utf8').on('data', (text: string) => {
      said += text;
    });
    command.on('error', reject);
    command.on('close', (code) => {
      const watched = (code === 0 || code === NOTHING_SEEN) && existsSync(out);
      resolve(
        watched
          ? ok(null)
          : fail({
              kind: code === NOTHING_SEEN ? 'nothing-seen' : 'measure-failed',
              words: said.trim().split('\n').at(-1) ?? '',
            }),
      );
    });
  });
}
