import type { ReactNode } from 'react';
import { FileField, VIDEO_FILES } from '../parts/file-field.tsx';
import { useChoices } from './choices.ts';

interface FilePickerProps {
  readonly className: string;
  readonly onPicked: () => void;
  readonly children: ReactNode;
}

/** A label that opens the browser's own file dialog; the chosen film goes to the choices. */
export function FilePicker({ className, onPicked, children }: FilePickerProps) {
  const takeFile = useChoices((s) => s.takeFile);
  return (
    <FileField
      className={className}
      accept={VIDEO_FILES}
      onFile={(file) => {
        takeFile(file);
        onPicked();
      }}
    >
      {children}
    </FileField>
  );
}
