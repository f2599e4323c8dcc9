import { type ReactNode, useEffect, useState } from 'react';
import { exerciseOf } from '../../exercises/catalogue.ts';
import type { LegDrawing } from '../../measure/live-view.ts';
import { type StillLeg, stillLeg } from '../../measure/still-leg.ts';
import type { AngleMarkFor } from '../../symptoms/angle-mark.ts';
import type { Ratio } from '../../units.ts';
import { useChoices } from '../choose/choices.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { Notice } from '../parts/notice.tsx';
import type { LookedAtPhoto, Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import type { DeskTask } from './desk-choice.ts';
import type { Reading } from './marks.ts';
import { StillMeasure } from './still-measure.tsx';

interface DeskPhotoProps {
  readonly task: DeskTask;
  readonly file: File;
  readonly onMark: (kind: AngleMarkFor, reading: Reading) => void;
  readonly children: ReactNode;
}

/** What is seen of the leg in a photo, with what is wrong with the view. */
interface Seen {
  readonly photo: LookedAtPhoto;
  readonly leg: StillLeg;
}

/** One photo: the angle that its points make. There is no rest in it to count from. */
export function DeskPhoto({ task: { exercise, side }, file, onMark, children }: DeskPhotoProps) {
  const { set } = useWords();
  const still = useStillWords();
  const services = useServices();
  const model = useChoices((s) => s.choices.model);
  const [seen, setSeen] = useState<Seen | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  const [loaded, setLoaded] = useState<Ratio | null>(null);
  const [corrected, setCorrected] = useState<LegDrawing | null>(null);
  useEffect(() => {
    let left = false;
    let photo: LookedAtPhoto | null = null;
    const look = async () => {
      const answer = await services.still.photo(file, { exercise, side, model }, (share) => left || setLoaded(share));
      if (answer.ok) photo = answer.value;
      if (left) return photo?.picture.close();
      if (!answer.ok) return setProblem(answer.error);
      const { observation, size } = answer.value;
      setSeen({ photo: answer.value, leg: stillLeg(observation, exerciseOf(exercise), side, size) });
    };
    void look();
    return () => {
      left = true;
      photo?.picture.close();
    };
  }, [services, file, exercise, side, model]);
  if (problem)
    return (
      <div className="desk-parts">
        <DayProblem problem={problem} />
        {children}
      </div>
    );
  if (!seen)
    return (
      <div className="desk-parts progress">
        <p role="status">{still.lookingAtPhoto}</p>
        {loaded !== null && loaded < 1 ? (
          <progress max={1} value={loaded} aria-label={set.loadingModel} />
        ) : (
          <progress aria-label={still.lookingAtPhoto} />
        )}
        {children}
      </div>
    );
  const { photo, leg } = seen;
  return (
    <div className="desk-parts">
      {leg.advice.length > 0 ? (
        <Notice icon="warning" look="caution" title={still.viewTitle}>
          <ul>
            {leg.advice.map((advice) => (
              <li key={advice}>{still.view[advice]}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
      <StillMeasure
        task={{ exercise, side }}
        image={photo.picture}
        size={photo.size}
        seen={leg}
        followed={null}
        corrected={corrected}
        onCorrect={setCorrected}
        onMark={onMark}
        below={<p className="soft">{still.photoZero}</p>}
      >
        {children}
      </StillMeasure>
    </div>
  );
}
