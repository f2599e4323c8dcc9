import { useEffect, useState } from 'react';
import type { CameraDevice } from '../../capture/camera.ts';
import { exerciseOf } from '../../exercises/catalogue.ts';
import { POSE_MODELS } from '../../pose/model.ts';
import { deg } from '../../units.ts';
import type { PictureKind } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { SeenByChoice } from '../stickers/seen-by-choice.tsx';
import { useWords } from '../words/words-context.tsx';
import { CameraSelect } from './camera-select.tsx';
import { KNEE_LIMITS, useChoices } from './choices.ts';
import { NumberStepper } from './number-stepper.tsx';
import { OptionCards } from './option-cards.tsx';
import { bySticker } from './plan.ts';
import './more-choices.css';

const HEADS = ['find', 'left', 'right'] as const;

/** What most people never need to choose. */
export function MoreChoices({ kind }: { readonly kind: PictureKind }) {
  const { choose } = useWords();
  const services = useServices();
  const { exercise, by, head, model, deviceId, kneeLimitDeg } = useChoices((s) => s.choices);
  const change = useChoices((s) => s.choose);
  const [cameras, setCameras] = useState<readonly CameraDevice[]>([]);
  useEffect(() => {
    if (kind === 'camera') services.cameras().then(setCameras);
  }, [kind, services]);
  return (
    <details className="more-choices">
      <summary>{choose.more}</summary>
      <div className="more-choices-parts">
        {exerciseOf(exercise).posture === 'lying' ? (
          <OptionCards
            legend={choose.head}
            name="head"
            options={HEADS.map((value) => ({ value, name: choose.heads[value] }))}
            chosen={head}
            onChoose={(value) => change({ head: value })}
          />
        ) : null}
        {exercise === 'leg-raise' ? (
          <NumberStepper
            label={choose.kneeLimit}
            fewer={choose.kneeLimitLess}
            more={choose.kneeLimitMore}
            value={kneeLimitDeg}
            least={KNEE_LIMITS.leastDeg}
            most={KNEE_LIMITS.mostDeg}
            step={KNEE_LIMITS.stepDeg}
            onChange={(value) => change({ kneeLimitDeg: deg(value) })}
          />
        ) : null}
        <SeenByChoice exercise={exercise} name="by" chosen={by} onChoose={(value) => change({ by: value })} />
        {bySticker({ exercise, by }) ? null : (
          <OptionCards
            legend={choose.model}
            name="model"
            options={POSE_MODELS.map((value) => ({ value, ...choose.models[value] }))}
            chosen={model}
            onChoose={(value) => change({ model: value })}
          />
        )}
        {cameras.length > 1 ? (
          <CameraSelect cameras={cameras} chosen={deviceId} onChoose={(id) => change({ deviceId: id })} />
        ) : null}
      </div>
    </details>
  );
}
