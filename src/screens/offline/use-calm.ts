import { useEffect, useState } from 'react';
import { useHashLocation } from 'wouter/use-hash-location';
import { useStore } from 'zustand';
import { useServices } from '../services-context.tsx';
import { useRunState } from '../set/run-context.tsx';
import { isResting } from './resting.ts';

/** How often it is looked whether a set that only this page holds is still there, ms. Chosen. */
const LOOK_MS = 2000;

/**
 * Whether this page may be loaded anew without a loss: it is a resting screen, nothing was typed or moved since it was opened, no set runs, and none is in
 * this page alone.
 */
export function useCalm(): boolean {
  const [address] = useHashLocation();
  const { busy, lock } = useServices();
  const erased = useStore(lock.state, (state) => state === 'erased');
  const running = useRunState((s) => s.plan !== null);
  const [typedAt, setTypedAt] = useState<string | null>(null);
  const [held, setHeld] = useState(busy);
  useEffect(() => {
    const typed = () => setTypedAt(address);
    document.addEventListener('input', typed, true);
    return () => document.removeEventListener('input', typed, true);
  }, [address]);
  // What was typed on a screen is gone or kept once it is left.
  useEffect(() => setTypedAt((at) => (at === address ? at : null)), [address]);
  useEffect(() => {
    const timer = setInterval(() => setHeld(busy()), LOOK_MS);
    return () => clearInterval(timer);
  }, [busy]);
  return isResting(address) && typedAt === null && !running && !held && !busy() && !erased;
}
