import { type ReactNode, useMemo, useState } from 'react';
import type { LegDrawing } from '../../measure/live-view.ts';
import type { AngleMarkFor } from '../../symptoms/angle-mark.ts';
import type { Ms } from '../../units.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { Notice } from '../parts/notice.tsx';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { type Film, facingIn } from './film.ts';
import { FilmBar } from './film-bar.tsx';
import { followedReading, type Reading } from './marks.ts';
import { StillMeasure } from './still-measure.tsx';
import { useFilmPicture } from './use-film-picture.ts';

interface DeskFilmProps {
  readonly film: Film;
  readonly onMark: (kind: AngleMarkFor, reading: Reading) => void;
  readonly children: ReactNode;
}

/** What is to be known of a measured film before its numbers are read. */
function FilmNotices({ film: { result, problem } }: Pick<DeskFilmProps, 'film'>) {
  const { result: resultWords } = useWords();
  const still = useStillWords();
  const warnings = [...new Set([...(result?.quality.warnings ?? []), ...(problem?.warnings ?? [])])];
  return (
    <>
      {problem && problem.kind !== 'nothing-measured' ? <DayProblem problem={problem} /> : null}
      {result ? null : (
        <Notice icon="warning" look="caution" title={still.unfollowed}>
          <p>{still.unfollowedAbout}</p>
        </Notice>
      )}
      {warnings.length > 0 ? (
        <Notice icon="warning" look="caution" title={resultWords.warningsTitle}>
          <ul>
            {warnings.map((warning) => (
              <li key={warning}>{resultWords.warnings[warning]}</li>
            ))}
          </ul>
        </Notice>
      ) : null}
    </>
  );
}

/** A measured film, picture by picture: each with its leg and its angle from the smoothed curve. */
export function DeskFilm({ film, onMark, children }: DeskFilmProps) {
  const still = useStillWords();
  const { file, frames, result, size, exercise } = film;
  const [at, setAt] = useState(0);
  const [byHand, setByHand] = useState<ReadonlyMap<Ms, LegDrawing>>(new Map());
  const { picture, problem } = useFilmPicture(file, frames[at]?.tMs as Ms);
  const facing = useMemo(() => facingIn(film), [film]);
  const legs = useMemo(() => new Map(frames.map(({ tMs, leg }) => [tMs, leg])), [frames]);
  const shownMs = picture?.tMs ?? null;
  const followed = useMemo(
    () => (result && shownMs !== null ? followedReading(exercise, result, shownMs) : null),
    [result, shownMs, exercise],
  );
  const correct = (leg: LegDrawing | null) => {
    if (shownMs === null) return;
    const next = new Map(byHand);
    if (leg) next.set(shownMs, leg);
    else next.delete(shownMs);
    setByHand(next);
  };
  return (
    <div className="desk-parts">
      <FilmNotices film={film} />
      <DayProblem problem={problem} />
      {picture ? (
        <StillMeasure
          task={film}
          image={picture.image}
          size={size}
          seen={{ leg: legs.get(picture.tMs) ?? null, facing, turnDeg: result?.quality.cameraTurnDeg ?? null }}
          followed={followed}
          corrected={byHand.get(picture.tMs) ?? null}
          onCorrect={correct}
          onMark={onMark}
          below={<FilmBar frames={frames} at={at} shownMs={shownMs} reps={result?.reps ?? []} onAt={setAt} />}
        >
          {children}
        </StillMeasure>
      ) : problem ? null : (
        <p role="status">{still.openingFilm}</p>
      )}
    </div>
  );
}
