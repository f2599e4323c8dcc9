import type { LiveView } from '../../src/measure/live-view.ts';
import type { AppServices } from '../../src/screens/services.ts';
import { createRun, type Run } from '../../src/screens/set/run.ts';
import { createSounds } from '../../src/screens/set/sounds.ts';
import type { Tone } from '../../src/screens/set/tones.ts';
import { en } from '../../src/screens/words/en.ts';
import { ms } from '../../src/units.ts';

/** A run whose sounds are written down, on a clock that the test moves. */
export function fakeRun(services: AppServices) {
  const said: string[] = [];
  const played: Tone[] = [];
  const faults: unknown[] = [];
  const world = { nowMs: 0, soundOn: true };
  const sounds = createSounds({
    speaker: {
      say: (text, onDone) => {
        said.push(text);
        onDone();
      },
      hush: () => undefined,
    },
    tones: { unlock: () => undefined, play: (tone) => played.push(tone) },
    soundOn: () => world.soundOn,
    now: () => world.nowMs,
  });
  const run: Run = createRun({
    services,
    words: () => en,
    sounds,
    now: () => ms(world.nowMs),
    onFault: (cause) => faults.push(cause),
  });
  return { run, sounds, said, played, faults, world };
}

export const aView = (change: Partial<LiveView> = {}): LiveView => ({
  phase: 'counting',
  angleDeg: null,
  count: 0,
  partialCount: 0,
  heldMs: null,
  restDeg: null,
  onsetDeg: null,
  advice: [],
  leg: null,
  glide: null,
  ...change,
});
