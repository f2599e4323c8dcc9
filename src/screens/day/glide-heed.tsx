import type { Side } from '../../pose/landmarks.ts';
import type { AngleMark } from '../../symptoms/angle-mark.ts';
import { glideLimit } from '../../symptoms/glide-limit.ts';
import { hasKeys } from '../set/has-keys.ts';
import { useGlideSetWords } from '../words/glide-set-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { dayIn } from './clock-words.ts';

interface GlideHeedProps {
  readonly side: Side;
  /** All that were kept of this person. */
  readonly marks: readonly AngleMark[];
}

/** Before a set of glides: how high the leg may be held, and what to do when symptoms rise. */
export function GlideHeed({ side, marks }: GlideHeedProps) {
  const { locale } = useWords();
  const words = useGlideSetWords();
  const limit = glideLimit(marks, side);
  const whole = (deg: number) => new Intl.NumberFormat(locale, { maximumFractionDigits: 0 }).format(deg);
  return (
    <>
      <p>{words.near}</p>
      <p>{limit ? words.limit(whole(limit.elevationDeg), dayIn(locale, limit.day)) : words.noLimit}</p>
      <p>{words.signal(hasKeys())}</p>
    </>
  );
}
