import { createContext, useContext } from 'react';
import type { Sounds } from './sounds.ts';

export const SoundsContext = createContext<Sounds | null>(null);

/** @throws Error outside of a SoundsContext */
export function useSounds(): Sounds {
  const sounds = useContext(SoundsContext);
  if (!sounds) throw new Error('useSounds requires a SoundsContext, got none');
  return sounds;
}
