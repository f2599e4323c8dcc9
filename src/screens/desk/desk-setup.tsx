import { useEffect } from 'react';
import { useChoices } from '../choose/choices.ts';
import { ExerciseDrawing } from '../choose/exercise-drawing.tsx';
import { OptionCards } from '../choose/option-cards.tsx';
import { DayProblem } from '../day/day-problem.tsx';
import type { Pictures, Problem } from '../services.ts';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { DESK_EXERCISES, DESK_SOURCES, type DeskChoice } from './desk-choice.ts';
import { cropOf, DeskSourceFields } from './desk-source.tsx';

interface DeskSetupProps {
  readonly choice: DeskChoice;
  readonly problem: Problem | null;
  readonly onChoice: (part: Partial<DeskChoice>) => void;
  readonly onStart: (pictures: Pictures) => void;
  readonly onPhoto: (file: File) => void;
}

/** Pictures that move; null: they are not chosen yet, or the choice is a photo. */
function picturesOf(choice: DeskChoice, deviceId: string | null): Pictures | null {
  const { source, shared, crop, film } = choice;
  const cut = cropOf(choice);
  if (source === 'camera') return { kind: 'camera', deviceId };
  if (source === 'file') return film && { kind: 'file', file: film };
  if (source === 'window') return shared && (crop === null || cut) ? { kind: 'window', shared, crop: cut } : null;
  return null;
}

/** Movement, leg and pictures. */
export function DeskSetup({ choice, problem, onChoice, onStart, onPhoto }: DeskSetupProps) {
  const { desk, exercises, sides, choose } = useWords();
  const still = useStillWords();
  const deviceId = useChoices((s) => s.choices.deviceId);
  const { exercise, side, source, shared, photo } = choice;
  // Sharing may be ended in the browser's own bar.
  useEffect(() => {
    const [track] = shared?.stream.getVideoTracks() ?? [];
    if (!track) return;
    const gone = () => onChoice({ shared: null, crop: null });
    if (track.readyState === 'ended') gone();
    track.addEventListener('ended', gone);
    return () => track.removeEventListener('ended', gone);
  }, [shared, onChoice]);
  const pictures = picturesOf(choice, deviceId);
  const photoChosen = source === 'photo' ? photo : null;
  return (
    <form
      className="desk-setup"
      onSubmit={(event) => {
        event.preventDefault();
        if (pictures) onStart(pictures);
        if (photoChosen) onPhoto(photoChosen);
      }}
    >
      <DayProblem problem={problem} />
      <OptionCards
        legend={desk.movement}
        name="desk-movement"
        options={DESK_EXERCISES.map((value) => ({
          value,
          name: exercises[value].name,
          drawing: <ExerciseDrawing exercise={value} side={side} />,
        }))}
        chosen={exercise}
        onChoose={(value) => onChoice({ exercise: value })}
      />
      <OptionCards
        legend={choose.side}
        hint={desk.sideHint}
        name="desk-side"
        options={(['left', 'right'] as const).map((value) => ({ value, name: sides[value].leg }))}
        chosen={side}
        onChoose={(value) => onChoice({ side: value })}
      />
      <OptionCards
        legend={desk.source}
        name="desk-source"
        options={DESK_SOURCES.map((value) => ({ value, ...desk.sources[value] }))}
        chosen={source}
        onChoose={(value) => onChoice({ source: value })}
      />
      <DeskSourceFields choice={choice} onChoice={onChoice} />
      <button type="submit" className="button" data-look="main" disabled={!pictures && !photoChosen}>
        {source === 'photo' ? still.lookAtPhoto : desk.start}
      </button>
    </form>
  );
}
