import type { Ref } from 'react';
import './progress-bar.css';

/** How much of some work is done. @param share 0 to 1; null: nobody can tell how much, only that it goes on */
export function ProgressBar({
  share,
  name,
  ref,
}: {
  readonly share: number | null;
  readonly name: string;
  readonly ref?: Ref<HTMLProgressElement>;
}) {
  return <progress ref={ref} className="progress-bar" max={1} aria-label={name} {...(share === null ? {} : { value: share })} />;
}
