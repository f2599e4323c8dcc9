import type { ReactNode } from 'react';
import './file-field.css';

interface FileFieldProps {
  readonly className: string;
  /** What the browser's dialog offers first. */
  readonly accept: string;
  readonly onFile: (file: File) => void;
  readonly children: ReactNode;
}

export const VIDEO_FILES = 'video/*,.mp4,.m4v,.mov,.webm,.mkv';

/** A label that opens the browser's own file dialog; a file can be dropped on it too. */
export function FileField({ className, accept, onFile, children }: FileFieldProps) {
  return (
    <label className={`file-picker ${className}`}>
      <input
        type="file"
        accept={accept}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          // The same file may be chosen again after it was put right.
          event.currentTarget.value = '';
          if (file) onFile(file);
        }}
      />
      {children}
    </label>
  );
}
