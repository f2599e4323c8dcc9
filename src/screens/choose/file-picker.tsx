import type { ReactNode } from 'react';
import { useChoices } from './choices.ts';
import './file-picker.css';

interface FilePickerProps {
  readonly className: string;
  readonly onPicked: () => void;
  readonly children: ReactNode;
}

/** A label that opens the browser's own file dialog; the chosen file goes to the choices. */
export function FilePicker({ className, onPicked, children }: FilePickerProps) {
  const takeFile = useChoices((s) => s.takeFile);
  return (
    <label className={`file-picker ${className}`}>
      <input
        type="file"
        accept="video/*,.mp4,.m4v,.mov,.webm,.mkv"
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          // The same file may be chosen again after it was put right.
          event.currentTarget.value = '';
          if (!file) return;
          takeFile(file);
          onPicked();
        }}
      />
      {children}
    </label>
  );
}
