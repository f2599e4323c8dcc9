import { act, render } from '@testing-library/react';
import { EXAMPLE_PLAN } from '../../src/screens/choose/plan.ts';
import type { SetPlan } from '../../src/screens/services.ts';
import { Caption } from '../../src/screens/set/caption.tsx';
import { CountRing } from '../../src/screens/set/count-ring.tsx';
import { Cue } from '../../src/screens/set/cue.tsx';
import { PhaseBanner } from '../../src/screens/set/phase-banner.tsx';
import { RunContext } from '../../src/screens/set/run-context.tsx';
import { SoundsContext } from '../../src/screens/set/sounds-context.tsx';
import { aView, fakeRun } from './fake-run.ts';
import { fakeServices } from './fake-services.ts';

export const PLAN: SetPlan = { ...EXAMPLE_PLAN, targetReps: 3, guide: { ...EXAMPLE_PLAN.guide, holdS: 2 } };
export const CAMERA: SetPlan = { ...PLAN, pictures: { kind: 'camera', deviceId: null } };
export const RAISE: SetPlan = { ...CAMERA, exercise: 'leg-raise', guide: { ...CAMERA.guide, target: { kind: 'symptoms' } } };

/** A set whose screen's words are shown, and what it says. */
export function shownSet(plan: SetPlan) {
  const fake = fakeServices();
  const driver = fakeRun(fake.services);
  const { container } = render(
    <SoundsContext value={driver.sounds}>
      <RunContext value={driver.run}>
        <PhaseBanner />
        <Caption />
        <CountRing />
        <Cue guide={plan.guide} />
      </RunContext>
    </SoundsContext>,
  );
  act(() => driver.run.begin(plan));
  const [set] = fake.begun;
  if (!set) throw new Error('begin requires a set to be run, got none');
  const { hooks } = set;
  const after = (...steps: readonly (() => void)[]) => {
    for (const step of steps) {
      act(step);
      driver.world.nowMs += 100;
    }
  };
  return { ...driver, hooks, container, after };
}

export type ShownSet = ReturnType<typeof shownSet>;

export const counting = (s: ShownSet, count = 1) => s.hooks.onView(aView({ count }));
