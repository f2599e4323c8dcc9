import { useState } from 'react';
import { cutOf } from '../../capture/crop.ts';
import { exerciseOf } from '../../exercises/catalogue.ts';
import { CameraPlan } from '../choose/camera-plan.tsx';
import { DayProblem } from '../day/day-problem.tsx';
import { FileField, VIDEO_FILES } from '../parts/file-field.tsx';
import { Icon } from '../parts/icon.tsx';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { CropPicker } from './crop-picker.tsx';
import type { DeskChoice } from './desk-choice.ts';

interface DeskSourceProps {
  readonly choice: DeskChoice;
  readonly onChoice: (part: Partial<DeskChoice>) => void;
}

/** Where the shared window is cut; null: it is not, or too small to measure in. */
export const cropOf = ({ shared, crop }: Pick<DeskChoice, 'shared' | 'crop'>) =>
  shared && crop ? cutOf(crop, shared.size) : null;

function WindowSource({ choice, onChoice }: DeskSourceProps) {
  const { desk } = useWords();
  const services = useServices();
  const [refused, setRefused] = useState<Problem | null>(null);
  const { shared, crop } = choice;
  const share = async () => {
    const answer = await services.shareWindow();
    setRefused(answer.ok ? null : answer.error);
    if (!answer.ok) return;
    shared?.stop();
    onChoice({ shared: answer.value, crop: null });
  };
  return (
    <>
      <DayProblem problem={refused} />
      <button type="button" className="button" data-look={shared ? undefined : 'main'} onClick={() => void share()}>
        {shared ? desk.otherWindow : desk.chooseWindow}
      </button>
      {shared ? <CropPicker shared={shared} crop={crop} onCrop={(next) => onChoice({ crop: next })} /> : null}
      {crop !== null && cropOf(choice) === null ? <p role="alert">{desk.cropTooSmall}</p> : null}
    </>
  );
}

function CameraSource({ choice: { exercise, side } }: DeskSourceProps) {
  const { choose } = useWords();
  const { posture } = exerciseOf(exercise);
  return (
    <figure className="desk-camera">
      <CameraPlan posture={posture} side={side} />
      <figcaption>{choose.camera[posture]}</figcaption>
    </figure>
  );
}

function FileSource({ kind, choice, onChoice }: DeskSourceProps & { readonly kind: 'film' | 'photo' }) {
  const still = useStillWords();
  const file = choice[kind];
  const { none, pick, other, about } = still.files[kind];
  return (
    <div className="desk-file">
      <Icon name="file" size={32} />
      <p className="desk-file-name">{file ? file.name : none}</p>
      <FileField
        className="button"
        accept={kind === 'film' ? VIDEO_FILES : 'image/*'}
        onFile={(chosen) => onChoice(kind === 'film' ? { film: chosen } : { photo: chosen })}
      >
        {file ? other : pick}
      </FileField>
      <p className="soft">{about}</p>
    </div>
  );
}

/** What the chosen kind of picture asks for before it is measured. */
export function DeskSourceFields(props: DeskSourceProps) {
  const { source } = props.choice;
  switch (source) {
    case 'window':
      return <WindowSource {...props} />;
    case 'camera':
      return <CameraSource {...props} />;
    case 'file':
      return <FileSource kind="film" {...props} />;
    case 'photo':
      return <FileSource kind="photo" {...props} />;
    default:
      return source satisfies never;
  }
}
