import { useEffect, useRef } from 'react';
import { rangeChangeOf } from '../../compare/range-error.ts';
import type { ExerciseId } from '../../exercises/exercise.ts';
import type { Side } from '../../pose/landmarks.ts';
import { ANGLE_MARKS } from '../../symptoms/angle-mark.ts';
import { useCopy } from '../parts/use-copy.ts';
import { degreesIn } from '../result/degrees.ts';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { KeepMarks } from './keep-marks.tsx';
import { MarkBetween } from './mark-between.tsx';
import { MarkList } from './mark-list.tsx';
import { groupsOf, MarkTable } from './mark-table.tsx';
import { type MarkNotes, marksOf } from './marks.ts';
import { resultsText } from './results-text.ts';
import type { Session } from './session.ts';

interface DeskResultsProps {
  readonly session: Session;
  readonly exercise: ExerciseId;
  /** The leg that is chosen now. */
  readonly side: Side;
  readonly onNotes: (id: string, notes: MarkNotes) => void;
  readonly onRemove: (id: string) => void;
  readonly onKept: (ids: readonly string[]) => void;
  readonly onForget: () => void;
  readonly onSide: (side: Side) => void;
}

/** The marked angles of one movement: each trial, mean and spread, and one leg against the other. Those of all movements are kept together. */
export function DeskResults({ session, exercise, side, onNotes, onRemove, onKept, onForget, onSide }: DeskResultsProps) {
  const words = useWords();
  const { desk, exercises, sides, locale } = words;
  const still = useStillWords();
  const { copied, copy } = useCopy();
  const heading = useRef<HTMLHeadingElement>(null);
  // What was pressed to come here is gone.
  useEffect(() => heading.current?.focus(), []);
  const degrees = degreesIn(locale);
  const { marks, kept } = session;
  const own = marks.filter((mark) => mark.exercise === exercise);
  const lost = own.filter(({ reading }) => reading === null).length;
  const groups = groupsOf(marks, exercise);
  const other = side === 'left' ? 'right' : 'left';
  const otherIsOpen = groups.length > 0 && groups.every((group) => group.side === side);
  return (
    <section className="desk-results">
      <h2 ref={heading} tabIndex={-1}>
        {exercises[exercise].name}. {desk.results}
      </h2>
      {own.length === 0 ? <p className="soft">{desk.none}</p> : null}
      {groups.length > 0 ? <MarkTable marks={marks} exercise={exercise} /> : null}
      {lost > 0 ? <p>{`${lost} × ${desk.notMeasured}`}</p> : null}
      {otherIsOpen ? (
        <button type="button" className="button" onClick={() => onSide(other)}>
          {still.otherLeg(sides[other].leg)}
        </button>
      ) : null}
      {(['rest', 'own'] as const).flatMap((zero) =>
        ANGLE_MARKS.map((kind) => (
          <MarkBetween key={`${kind} ${zero}`} marks={marks} exercise={exercise} kind={kind} zero={zero} />
        )),
      )}
      {groups.length > 0 ? (
        <>
          <details className="desk-each">
            <summary>{still.each}</summary>
            <MarkList
              marks={marks}
              shown={groups.flatMap((group) => marksOf(marks, exercise, group))}
              kept={kept}
              onNotes={onNotes}
              onRemove={onRemove}
            />
          </details>
          <p className="soft">
            {desk.error(degrees(rangeChangeOf(exercise, 'marks')))} {desk.method}
          </p>
        </>
      ) : null}
      <KeepMarks marks={marks} kept={kept} sessionId={session.id} onKept={onKept} />
      <div className="desk-done">
        <button type="button" className="button" onClick={() => void copy(resultsText(marks, exercise, words))}>
          {desk.copy}
        </button>
        <button type="button" className="button" onClick={onForget}>
          {desk.forget}
        </button>
        <span role="status">{copied ? desk.copied : ''}</span>
      </div>
    </section>
  );
}
