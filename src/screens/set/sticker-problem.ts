import type { Problem } from '../problem.ts';
import type { Words } from '../words/words.ts';

/** What went wrong and what to do. @param stickers the set is seen through stickers, and not by a model that sees a leg */
export function problemSays(
  { kind, detail }: Problem,
  stickers: boolean,
  { problems, set }: Pick<Words, 'problems' | 'set'>,
): { readonly title: string; readonly todo: string } {
  const words = problems[kind](detail ?? '');
  if (!stickers) return words;
  if (kind === 'nothing-measured') return { ...words, todo: set.stickers.nothing };
  return kind === 'pose-failed' ? { title: set.stickers.stopped, todo: set.stickers.stoppedTodo } : words;
}
