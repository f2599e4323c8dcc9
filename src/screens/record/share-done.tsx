import { ProgressBar } from '../parts/progress-bar.tsx';

/** How much of a long work is done; nothing before it has begun, nor where it is over at once. @param share 0 to 1 */
export function ShareDone({ share, name }: { readonly share: number; readonly name: string }) {
  return share > 0 && share < 1 ? <ProgressBar share={share} name={name} /> : null;
}
