import type { CameraDevice } from '../../capture/camera.ts';
import { useWords } from '../words/words-context.tsx';
import './camera-select.css';

interface CameraSelectProps {
  readonly cameras: readonly CameraDevice[];
  /** Null: the browser's usual camera. */
  readonly chosen: string | null;
  readonly onChoose: (id: string | null) => void;
}

/** Which of several cameras. */
export function CameraSelect({ cameras, chosen, onChoose }: CameraSelectProps) {
  const { choose } = useWords();
  const known = cameras.some((c) => c.id === chosen);
  return (
    <label className="camera-select">
      {choose.cameraDevice}
      <select value={known && chosen ? chosen : ''} onChange={(event) => onChoose(event.currentTarget.value || null)}>
        <option value="">{choose.anyCamera}</option>
        {cameras.map((camera, i) => (
          <option key={camera.id} value={camera.id}>
            {camera.label || choose.unnamedCamera(i + 1)}
          </option>
        ))}
      </select>
    </label>
  );
}
