import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import { ErasedScreen, UnlockScreen } from '../later-screens.tsx';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';

/** Shows nothing of the program but the way in while the records are locked. */
export function LockGate({ children }: { readonly children: ReactNode }) {
  const { app } = useWords();
  const state = useStore(useServices().lock.state);
  if (state === 'opening') return <p className="heard">{app.loading}</p>;
  if (state === 'erased') return <ErasedScreen />;
  return state === 'locked' ? <UnlockScreen /> : children;
}
