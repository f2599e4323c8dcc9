import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { measureRecording } from '../../src/record/measure-recording.ts';
import { decodeRecording, encodeRecording, type Recording } from '../../src/record/recording.ts';
import { median } from '../../src/signal/median.ts';
import { exerciseOfClip, truthOf } from '../clips/truth.ts';

const FOLDER = join(import.meta.dirname, '../../recordings');
const IDS = readdirSync(FOLDER)
  .filter((name) => name.endsWith('.json'))
  .map((name) => name.replace('.json', ''));

const textOf = (id: string): string => readFileSync(join(FOLDER, `${id}.json`), 'utf8');

function recordingOf(id: string): Recording {
  const decoded = decodeRecording(textOf(id));
  if (!decoded.ok) throw new Error(`${id} is no recording: ${JSON.stringify(decoded.error)}`);
  return decoded.value;
}

test('there is a recording of each exercise but the heel stand', () => {
  expect(new Set(IDS.map((id) => recordingOf(id).exercise))).toEqual(
    new Set(['foot-tap', 'leg-raise', 'knee-straighten', 'nerve-glide', 'toe-lift']),
  );
});

describe.each(IDS)('%s', (id) => {
  test('is of the clip it is named for', () => {
    const { exercise, side, source } = recordingOf(id);
    const truth = truthOf(id);
    expect({ exercise, side, file: source.file }).toEqual({
      exercise: exerciseOfClip(truth),
      side: truth.side,
      file: `${id}.mp4`,
    });
  });

  test('asked for the leg turned away, it says so and gives no number', () => {
    const watched = recordingOf(id);
    // Stickers sit on the foot that was meant.
    if (watched.model === 'stickers') return;
    const side = watched.side === 'left' ? 'right' : 'left';
    expect(measureRecording({ ...watched, side })).toMatchObject({ reps: [], framesUsed: 0, quality: { warnings: ['far-leg'] } });
    expect(measureRecording(watched).quality.warnings).not.toContain('far-leg');
  });

  test('is written as it would be written today', () => {
    const { observations, ...meta } = recordingOf(id);
    expect(encodeRecording(observations, meta)).toBe(textOf(id));
  });

  test('gives the true count when it is measured', () => {
    const result = measureRecording(recordingOf(id));
    expect({ count: result.count, partial: result.partialCount }).toEqual({ count: truthOf(id).reps.length, partial: 0 });
  });

  test('gives a repetition at each true one', () => {
    const complete = measureRecording(recordingOf(id)).reps.filter((rep) => rep.complete);
    const peaksInside = truthOf(id).reps.map(
      (real) => complete.filter((r) => r.peakMs > real.startMs && r.peakMs < real.endMs).length,
    );
    expect(peaksInside).toEqual(truthOf(id).reps.map(() => 1));
  });
});

// Nothing is said of how long a glide is held.
test.each(IDS.filter((id) => id !== 'slr-left-kneebend' && !id.startsWith('glide-')))(
  '%s: holds are as long as the true ones',
  (id) => {
    const off = measureRecording(recordingOf(id)).reps.map((rep, i) => Math.abs(rep.holdMs - (truthOf(id).reps[i]?.holdMs ?? 0)));
    // One picture more or less at either end of it.
    expect(median(off)).toBeLessThan(42);
  },
);
