import type { FrameTaken } from '../../capture/between-frames.ts';
import { breakOf } from '../../run/session-break.ts';
import type { StickerClient } from '../../run/sticker-client.ts';
import type { Pictures, StickerLook, StickerLookHooks } from '../services.ts';
import { openFilmToLook, type ShownFilm } from './film-look.ts';
import { stickerClient } from './kept-clients.ts';
import { openPictures } from './open-pictures.ts';

/** What is asked of the next picture. */
type Question = (client: StickerClient, frame: FrameTaken) => Promise<void>;

/** Shows a camera's pictures, or one of a film, and looks at the stickers in them, before a set: one picture in work at a time. */
export function lookAtStickers(pictures: Pictures, hooks: StickerLookHooks): StickerLook {
  const questions: Question[] = [];
  let following = false;
  let film: ShownFilm | null = null;
  const abort = new AbortController();
  const ask = <T>(question: (client: StickerClient, frame: FrameTaken) => Promise<T>): Promise<T> =>
    new Promise((resolve, reject) => {
      questions.push((client, frame) => question(client, frame).then(resolve, reject));
    });

  const run = async (): Promise<void> => {
    const client = stickerClient.get();
    const shown = pictures.kind === 'file' ? await openFilmToLook(pictures.file) : null;
    if (shown?.ok) film = shown.value;
    const opened = shown ?? (await openPictures(pictures));
    if (!opened.ok) return hooks.onProblem(opened.error);
    const { source } = opened.value;
    abort.signal.addEventListener('abort', source.stop, { once: true });
    if (abort.signal.aborted) return source.stop();
    hooks.onOpened(opened.value.opened);
    try {
      for await (const frame of source.frames()) {
        if (abort.signal.aborted) {
          frame.image.close();
          break;
        }
        hooks.onFrame(frame);
        const question = questions.shift();
        if (question) await question(client, frame);
        else if (following) hooks.onSeen(await client.observe(frame));
        else frame.image.close();
      }
    } catch (cause) {
      if (abort.signal.aborted) return;
      const broken = breakOf(cause);
      if (!broken) throw cause;
      hooks.onProblem({ kind: broken.kind });
    } finally {
      source.stop();
    }
  };
  run().catch((cause: unknown) => hooks.onProblem({ kind: 'unexpected', detail: String(cause) }));

  return {
    find: (angle, hint) => ask((client, frame) => client.find(frame, angle, hint)),
    learn: (tap) => ask((client, frame) => client.learn(frame, tap)),
    tapSkin: (spots) => ask((client, frame) => client.tapSkin(frame, spots)),
    async watch(task) {
      following = false;
      await stickerClient.get().begin(task);
      following = true;
    },
    showAt: (tMs) => film?.showAt(tMs),
    stop: () => abort.abort(),
  };
}
