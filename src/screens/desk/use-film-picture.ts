import { useEffect, useRef, useState } from 'react';
import type { Ms } from '../../units.ts';
import type { Problem } from '../services.ts';
import { useServices } from '../services-context.tsx';
import { drawFrame } from '../set/draw-frame.ts';

/** A film's picture with the time that the file gives it. */
export interface FilmPicture {
  readonly image: HTMLCanvasElement;
  readonly tMs: Ms;
}

interface FilmPictureInUse {
  /** The newest that was decoded: the one asked for, or one before while that is on its way. Null before the first. */
  readonly picture: FilmPicture | null;
  readonly problem: Problem | null;
}

/** The film's own picture at `tMs`. While one is decoded only the newest wish waits. */
export function useFilmPicture(file: File, tMs: Ms): FilmPictureInUse {
  const services = useServices();
  const [shown, setShown] = useState<FilmPictureInUse>({ picture: null, problem: null });
  const wanted = useRef(tMs);
  const wake = useRef<() => void>(() => undefined);
  useEffect(() => {
    wanted.current = tMs;
    wake.current();
  }, [tMs]);
  useEffect(() => {
    let left = false;
    const show = async () => {
      const film = await services.still.openFilm(file);
      if (!film.ok) {
        if (!left) setShown({ picture: null, problem: film.error });
        return;
      }
      let done: Ms | null = null;
      // The one on the screen, and the one it replaced: drawn from until the screen has changed.
      const drawn: HTMLCanvasElement[] = [];
      while (!left) {
        if (done === wanted.current) {
          await new Promise<void>((resolve) => {
            wake.current = resolve;
          });
          continue;
        }
        done = wanted.current;
        const frame = await film.value.frameAt(done);
        if (!frame) {
          if (!left) setShown(({ picture }) => ({ picture, problem: { kind: 'file-damaged' } }));
          continue;
        }
        const image = document.createElement('canvas');
        drawFrame(image, frame);
        frame.image.close();
        drawn.push(image);
        // A large picture's memory is given back at once, not when somebody comes to collect it.
        if (drawn.length > 2) Object.assign(drawn.shift() ?? {}, { width: 0, height: 0 });
        if (!left) setShown({ picture: { image, tMs: frame.tMs }, problem: null });
      }
      film.value.close();
    };
    void show();
    return () => {
      left = true;
      wake.current();
    };
  }, [services, file]);
  return shown;
}
