import { useGlideSetWords } from '../words/glide-set-catalogues.ts';
import { type GlideMark, markOf } from './glide-mark.ts';
import './glide-marks.css';
import { useRunState } from './run-context.tsx';

/** One shape for each, so that colour need not tell them apart. */
const SHAPE: Record<GlideMark, string> = {
  slide: 'm5 12.5 5 5 9-11',
  tension: 'M5 8h12l-4-4M19 16H7l4 4',
  unclear: 'M8.5 9a3.5 3.5 0 1 1 5 3.2c-1 .5-1.5 1-1.5 2.3m0 3.6v.4',
  hidden: 'M4 12h16',
};

function Sign({ mark }: { readonly mark: GlideMark }) {
  return (
    <svg className="glide-sign" data-mark={mark} viewBox="0 0 24 24" aria-hidden="true">
      <path d={SHAPE[mark]} />
    </svg>
  );
}

/** What each cycle was, as a row of signs, the newest in a word. Calm: never spoken, never red. */
export function GlideMarks() {
  const words = useGlideSetWords();
  const marks = useRunState((s) => s.glideCycles).map(markOf);
  const newest = marks.at(-1);
  // Its room is kept, so that the first one moves nothing.
  if (!newest) return <p className="glide-marks" />;
  return (
    <p className="glide-marks" aria-live="off">
      <span className="heard">{words.marks}: </span>
      <span className="glide-signs" aria-hidden="true">
        {marks.map((mark, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: cycles have no other name than their place.
          <Sign key={i} mark={mark} />
        ))}
      </span>
      <span className="glide-mark-word">{words.mark[newest]}</span>
    </p>
  );
}
