import { useEffect, useRef, useState } from 'react';
import { type Ms, ms } from '../../units.ts';
import { useSounds } from '../set/sounds-context.tsx';
import { useStickerWords } from '../words/sticker-catalogues.ts';
import type { SetUp } from './set-up-state.ts';
import { BEGINS_AFTER_MS, hearSign, isAllRight, SILENT, signOf } from './set-up-voice.ts';

/** How often it is looked what to say, ms. Chosen. */
const LOOK_MS = 200;

/** A set that begins by itself. */
export interface HandsFree {
  readonly armed: boolean;
  /** Whole seconds until it begins; null: not all is right yet. */
  readonly beginsInS: number | null;
  readonly arm: (armed: boolean) => void;
}

/** Says how the stickers are seen while somebody's hands are at the foot, and begins the set when all has been right for a while, if that was asked for. */
export function useHandsFree(setUp: SetUp, live: boolean, begin: () => void): HandsFree {
  const sounds = useSounds();
  const { voice } = useStickerWords();
  const [armed, setArmed] = useState(false);
  const [beginsInS, setBeginsInS] = useState<number | null>(null);
  const told = useRef({ voice, begin });
  told.current = { voice, begin };
  useEffect(() => {
    if (!live) return;
    let spoken = SILENT;
    let rightSince: Ms | null = null;
    const look = () => {
      const now = ms(performance.now());
      const state = setUp.state.getState();
      if (state.problem) return;
      const heard = hearSign(spoken, signOf(state, armed), now);
      spoken = heard.state;
      if (heard.say) sounds.say(told.current.voice.signs[heard.say]);
      if (!armed) return;
      const wasRight = rightSince !== null;
      rightSince = isAllRight(state) ? (rightSince ?? now) : null;
      if (rightSince === null) return setBeginsInS(null);
      if (!wasRight) {
        sounds.say(told.current.voice.begins);
        // Told with it: all is right.
        spoken = { ...spoken, said: 'good' };
      }
      const leftMs = BEGINS_AFTER_MS - (now - rightSince);
      if (leftMs > 0) return setBeginsInS(Math.ceil(leftMs / 1000));
      clearInterval(timer);
      told.current.begin();
    };
    const timer = setInterval(look, LOOK_MS);
    return () => {
      clearInterval(timer);
      setBeginsInS(null);
    };
  }, [setUp, live, armed, sounds]);
  return { armed, beginsInS, arm: setArmed };
}
