import { useLocation } from 'wouter';
import { FilePicker } from '../choose/file-picker.tsx';
import { Icon, type IconName } from '../parts/icon.tsx';
import type { PictureKind } from '../services.ts';
import { useBeginExample } from '../set/begin.ts';
import { useWords } from '../words/words-context.tsx';
import './source-choices.css';

const SIGN: Record<PictureKind, IconName> = { camera: 'camera', file: 'file', example: 'play' };

function Inside({ kind }: { readonly kind: PictureKind }) {
  const { name, about } = useWords().start.sources[kind];
  return (
    <>
      <Icon name={SIGN[kind]} size={44} />
      <span className="source-name">{name}</span>
      <span className="source-about">{about}</span>
    </>
  );
}

/** The three ways to begin. */
export function SourceChoices() {
  const { start } = useWords();
  const [, navigate] = useLocation();
  const beginExample = useBeginExample();
  return (
    <section aria-label={start.ways}>
      <ul className="sources">
        <li>
          <button type="button" className="source" data-look="main" onClick={() => navigate('/choose/camera')}>
            <Inside kind="camera" />
          </button>
        </li>
        <li>
          <FilePicker className="source" onPicked={() => navigate('/choose/file')}>
            <Inside kind="file" />
          </FilePicker>
        </li>
        <li>
          <button type="button" className="source" onClick={beginExample}>
            <Inside kind="example" />
          </button>
        </li>
      </ul>
    </section>
  );
}
