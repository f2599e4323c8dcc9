import { Icon } from '../parts/icon.tsx';
import { useWords } from '../words/words-context.tsx';
import { useChoices } from './choices.ts';
import { FilePicker } from './file-picker.tsx';
import './chosen-file.css';

/** The video file that will be measured, and the way to another. */
export function ChosenFile() {
  const { choose } = useWords();
  const file = useChoices((s) => s.file);
  return (
    <div className="chosen-file">
      <Icon name="file" size={32} />
      <p className="chosen-file-name">{file ? file.name : choose.noFile}</p>
      <FilePicker className="button" onPicked={() => undefined}>
        {file ? choose.otherFile : choose.pickFile}
      </FilePicker>
    </div>
  );
}
