import { openVideoFile, VideoFileBroken } from '../../capture/video-file.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { FrameSource } from '../../run/frame-source.ts';
import { type Ms, ms } from '../../units.ts';
import type { OpenedPictures, Problem } from '../services.ts';
import { problemOf } from './problem-of.ts';

/** One picture of a film that stands still comes again after this long, ms. Chosen: what is asked of it is answered at once, and the machine rests between. */
const AGAIN_MS = 150;

/** A film of which one picture is shown. */
export interface ShownFilm {
  readonly source: FrameSource;
  readonly opened: OpenedPictures;
  /** Goes to the picture at this time; where none can be decoded the one before stays. */
  readonly showAt: (tMs: Ms) => void;
}

/** Opens a film as a source that gives its first picture over and over, or the one that is asked for. Its clock goes on, as a camera's does. */
export async function openFilmToLook(file: File): Promise<Result<ShownFilm, Problem>> {
  const film = await openVideoFile(file);
  if (!film.ok) return fail(problemOf(film.error));
  const { size, durationMs, frameAt, close } = film.value;
  let wanted = ms(0);
  let stopped = false;
  let wake: () => void = () => undefined;

  async function* frames(): ReturnType<FrameSource['frames']> {
    let shown = await frameAt(wanted);
    let shownMs = wanted;
    let tMs = 0;
    try {
      if (!shown) throw new VideoFileBroken(ms(0));
      while (!stopped) {
        if (wanted !== shownMs) {
          shownMs = wanted;
          const next = await frameAt(shownMs);
          if (next) {
            shown.image.close();
            shown = next;
          }
        }
        const { image, turn } = shown;
        yield { tMs: ms(tMs), image: 'clone' in image ? image.clone() : await createImageBitmap(image), turn };
        tMs += AGAIN_MS;
        await new Promise<void>((done) => {
          wake = done;
          setTimeout(done, AGAIN_MS);
        });
      }
    } finally {
      shown?.image.close();
    }
  }

  return ok({
    source: {
      size,
      live: false,
      frames,
      stop() {
        stopped = true;
        wake();
        close();
      },
    },
    opened: { size, durationMs, preview: null },
    showAt(tMs) {
      wanted = tMs;
      wake();
    },
  });
}
