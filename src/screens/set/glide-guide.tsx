import { useEffect, useRef } from 'react';
import { cueOf, GLIDE_ENDS, type GlideAngles, glideAngles } from '../../dose/glide-pace.ts';
import type { PaceMoment } from '../../dose/pace.ts';
import type { Side } from '../../pose/landmarks.ts';
import { useGlideSetWords } from '../words/glide-set-catalogues.ts';
import { GlideFigure, poseFigure } from './glide-figure.tsx';
import './glide-guide.css';
import { wantsLessMotion } from './less-motion.ts';
import { useSounds } from './sounds-context.tsx';
import type { RunningPace } from './use-pace.ts';

/** Two still drawings that take turns, for whom motion disturbs: the end of each way is where it is to come to. */
const stillAngles = ({ beat }: PaceMoment): GlideAngles => (beat === 'back' ? GLIDE_ENDS.pulled : GLIDE_ENDS.pointed);

interface GlideGuideProps {
  readonly pace: RunningPace;
  readonly side: Side;
  /** Whether the cues are spoken. */
  readonly speaks: boolean;
}

/** The two movements of a glide in the right order, to move along with: drawn, written, and spoken by one clock. */
export function GlideGuide({ pace: { moment, now }, side, speaks }: GlideGuideProps) {
  const words = useGlideSetWords();
  const sounds = useSounds();
  const head = useRef<SVGGElement>(null);
  const foot = useRef<SVGGElement>(null);
  const look = useRef(now);
  look.current = now;
  const beat = moment?.beat ?? null;
  const cue = beat && cueOf(beat);
  useEffect(() => {
    if (speaks && cue) sounds.say(words.cue[cue], 'cue');
  }, [speaks, cue, sounds, words]);
  useEffect(() => {
    let asked = requestAnimationFrame(function paint() {
      const at = look.current();
      if (at && head.current && foot.current)
        poseFigure({ head: head.current, foot: foot.current }, wantsLessMotion() ? stillAngles(at) : glideAngles(at));
      asked = requestAnimationFrame(paint);
    });
    return () => cancelAnimationFrame(asked);
  }, []);
  return (
    <div className="glide-guide" data-cue={cue ?? beat ?? 'none'}>
      <div className="glide-drawing">
        <GlideFigure side={side} name={words.drawing} head={head} foot={foot} />
      </div>
      {/* Spoken by the voice; read aloud as well it would cover the count. */}
      <p className="glide-cue">{cue ? words.cue[cue] : beat === 'hold' ? words.hold : null}</p>
    </div>
  );
}
