import { useEffect, useState } from 'react';
import { cutOf } from '../../capture/crop.ts';
import { exerciseOf } from '../../exercises/catalogue.ts';
import { EXERCISE_IDS } from '../../exercises/exercise.ts';
import { CameraPlan } from '../choose/camera-plan.tsx';
import { useChoices } from '../choose/choices.ts';
import { ExerciseDrawing } from '../choose/exercise-drawing.tsx';
import { OptionCards } from '../choose/option-cards.tsx';
import { DayProblem } from '../day/day-problem.tsx';
import type { Pictures, Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { CropPicker } from './crop-picker.tsx';
import { DESK_SOURCES, type DeskChoice } from './desk-choice.ts';

interface DeskSetupProps {
  readonly choice: DeskChoice;
  readonly problem: Problem | null;
  readonly onChoice: (part: Partial<DeskChoice>) => void;
  readonly onStart: (pictures: Pictures) => void;
}

/** Movement, leg and pictures. */
export function DeskSetup({ choice, problem, onChoice, onStart }: DeskSetupProps) {
  const { desk, exercises, sides, choose } = useWords();
  const services = useServices();
  const deviceId = useChoices((s) => s.choices.deviceId);
  const [refused, setRefused] = useState<Problem | null>(null);
  const { exercise, side, source, shared, crop } = choice;
  // Sharing may be ended in the browser's own bar.
  useEffect(() => {
    const [track] = shared?.stream.getVideoTracks() ?? [];
    if (!track) return;
    const gone = () => onChoice({ shared: null, crop: null });
    if (track.readyState === 'ended') gone();
    track.addEventListener('ended', gone);
    return () => track.removeEventListener('ended', gone);
  }, [shared, onChoice]);
  const share = async () => {
    const answer = await services.shareWindow();
    setRefused(answer.ok ? null : answer.error);
    if (!answer.ok) return;
    shared?.stop();
    onChoice({ shared: answer.value, crop: null });
  };
  const cut = shared && crop ? cutOf(crop, shared.size) : null;
  const tooSmall = crop !== null && cut === null;
  const pictures: Pictures | null =
    source === 'camera' ? { kind: 'camera', deviceId } : shared && !tooSmall ? { kind: 'window', shared, crop: cut } : null;
  const { posture } = exerciseOf(exercise);
  return (
    <form
      className="desk-setup"
      onSubmit={(event) => {
        event.preventDefault();
        if (pictures) onStart(pictures);
      }}
    >
      <DayProblem problem={refused ?? problem} />
      <OptionCards
        legend={desk.movement}
        name="desk-movement"
        options={EXERCISE_IDS.map((value) => ({
          value,
          name: exercises[value].name,
          drawing: <ExerciseDrawing exercise={value} side={side} />,
        }))}
        chosen={exercise}
        onChoose={(value) => onChoice({ exercise: value })}
      />
      <OptionCards
        legend={choose.side}
        hint={choose.sideHint}
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
      {source === 'window' ? (
        <button type="button" className="button" data-look={shared ? undefined : 'main'} onClick={() => void share()}>
          {shared ? desk.otherWindow : desk.chooseWindow}
        </button>
      ) : (
        <figure className="desk-camera">
          <CameraPlan posture={posture} side={side} />
          <figcaption>{choose.camera[posture]}</figcaption>
        </figure>
      )}
      {source === 'window' && shared ? (
        <CropPicker shared={shared} crop={crop} onCrop={(next) => onChoice({ crop: next })} />
      ) : null}
      {tooSmall ? <p role="alert">{desk.cropTooSmall}</p> : null}
      <button type="submit" className="button" data-look="main" disabled={!pictures}>
        {desk.start}
      </button>
    </form>
  );
}
