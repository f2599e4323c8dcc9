import { useMemo, useState } from 'react';
import { glidePace } from '../../dose/glide-pace.ts';
import type { Side } from '../../pose/landmarks.ts';
import { useGlideSetWords } from '../words/glide-set-catalogues.ts';
import './glide-demo.css';
import { GlideGuide } from './glide-guide.tsx';
import { usePace } from './use-pace.ts';

interface GlideDemoProps {
  readonly side: Side;
  readonly tempoS: number | null;
  readonly holdS: number;
}

/** What is to be done, shown before the set at its own pace, silently; it can be stopped. */
export function GlideDemo({ side, tempoS, holdS }: GlideDemoProps) {
  const words = useGlideSetWords();
  const [moves, setMoves] = useState(true);
  const pace = usePace(
    useMemo(() => glidePace({ tempoS, holdS }), [tempoS, holdS]),
    moves,
  );
  return (
    <div className="glide-demo">
      <GlideGuide pace={pace} side={side} speaks={false} />
      <button type="button" className="button" data-look="quiet" onClick={() => setMoves(!moves)}>
        {moves ? words.pause : words.play}
      </button>
    </div>
  );
}
