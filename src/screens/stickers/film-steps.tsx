import { useStore } from 'zustand';
import { ms } from '../../units.ts';
import { Icon } from '../parts/icon.tsx';
import { clockOf } from '../result/clock.ts';
import { useStickerWords } from '../words/sticker-catalogues.ts';
import type { SetUp } from './set-up-state.ts';

const STEP_MS = 1000;

/** Which picture of the film is shown, and the way to others: hands may still be at the foot in the first. */
export function FilmSteps({ setUp }: { readonly setUp: SetUp }) {
  const { film } = useStickerWords();
  const shownMs = useStore(setUp.state, (s) => s.shownMs);
  const durationMs = useStore(setUp.state, (s) => s.durationMs);
  if (durationMs === null) return null;
  const step = (by: number) => setUp.showAt(ms(shownMs + by));
  return (
    <div className="film-steps">
      <button type="button" className="button" disabled={shownMs <= 0} onClick={() => step(-STEP_MS)}>
        <Icon name="back" />
        {film.earlier}
      </button>
      <p className="numbers" role="status">
        {film.picture(clockOf(shownMs), clockOf(durationMs))}
      </p>
      <button type="button" className="button" disabled={shownMs + STEP_MS >= durationMs} onClick={() => step(STEP_MS)}>
        {film.later}
        <Icon name="forward" />
      </button>
    </div>
  );
}
