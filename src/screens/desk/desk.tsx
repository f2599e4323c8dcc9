import { useState } from 'react';
import { newId } from '../../record/new-id.ts';
import type { AngleMarkFor } from '../../symptoms/angle-mark.ts';
import { LiveSign } from '../parts/live-sign.tsx';
import { Page } from '../parts/page.tsx';
import { useRunState } from '../set/run-context.tsx';
import { useStillWords } from '../words/still-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import type { DeskChoice } from './desk-choice.ts';
import { DeskFilm } from './desk-film.tsx';
import { DeskLive } from './desk-live.tsx';
import { DeskPhoto } from './desk-photo.tsx';
import { DeskResults } from './desk-results.tsx';
import './desk-screen.css';
import { DeskSetup } from './desk-setup.tsx';
import { FilmMeasuring } from './film-measuring.tsx';
import { MarkNotesFields } from './mark-notes-fields.tsx';
import type { Mark, MarkNotes, Reading } from './marks.ts';
import { freshSession, useSession } from './session.ts';
import { useRecording } from './use-recording.ts';

interface DeskProps {
  readonly choice: DeskChoice;
  readonly onChoice: (part: Partial<DeskChoice>) => void;
}

const NO_NOTES: MarkNotes = { foot: null, place: null };

/** Setting up, measuring, and what was marked so far. */
export function Desk({ choice, onChoice }: DeskProps) {
  const { desk } = useWords();
  const still = useStillWords();
  const [session, setSession] = useSession();
  const [notes, setNotes] = useState(NO_NOTES);
  const [photo, setPhoto] = useState<File | null>(null);
  const plan = useRunState((s) => s.plan);
  const addMarks = (added: readonly Mark[]) => setSession((before) => ({ ...before, marks: [...before.marks, ...added] }));
  const { exercise, side } = choice;
  const markOf = (kind: AngleMarkFor) => ({ id: newId(), kind, exercise, side, from: choice.source, notes });
  const recording = useRecording({ exercise, side }, addMarks);
  const choose = (part: Partial<DeskChoice>) => {
    // A place is one of a leg, and how the foot was held is asked anew.
    if (part.side !== undefined || part.exercise !== undefined) setNotes(NO_NOTES);
    onChoice(part);
  };
  const { film } = recording;
  const busy = recording.running || film !== null || photo !== null;
  const mark = (kind: AngleMarkFor, reading: Reading) => addMarks([{ ...markOf(kind), reading }]);
  const noted = <MarkNotesFields side={side} notes={notes} onNotes={setNotes} />;
  const end = (leave: () => void) => (
    <>
      {noted}
      <button type="button" className="button" data-look="main" onClick={leave}>
        {desk.done}
      </button>
    </>
  );
  const measuring = () => {
    if (film)
      return (
        <DeskFilm film={film} onMark={mark}>
          {end(recording.closeFilm)}
        </DeskFilm>
      );
    if (photo)
      return (
        <DeskPhoto task={choice} file={photo} onMark={mark}>
          {end(() => setPhoto(null))}
        </DeskPhoto>
      );
    if (!plan) return null;
    if (plan.pictures.kind === 'file') return <FilmMeasuring plan={plan} />;
    return (
      <DeskLive
        plan={plan}
        onLiveMark={(kind, tMs, liveDeg) => recording.wait({ ...markOf(kind), tMs, liveDeg })}
        onMark={(kind, reading) => recording.wait({ ...markOf(kind), reading })}
      >
        {noted}
      </DeskLive>
    );
  };
  return (
    <Page className="desk" title={desk.title} lead={busy ? undefined : desk.lead} back="/">
      {choice.shared ? <LiveSign>{still.windowShared}</LiveSign> : null}
      {busy ? (
        measuring()
      ) : (
        <div className="desk-parts">
          {session.marks.length > 0 ? (
            <DeskResults
              session={session}
              exercise={exercise}
              side={side}
              onSide={(next) => choose({ side: next })}
              onNotes={(id, changed) =>
                setSession((before) => ({
                  ...before,
                  marks: before.marks.map((each) => (each.id === id ? { ...each, notes: changed } : each)),
                }))
              }
              onRemove={(id) => setSession((before) => ({ ...before, marks: before.marks.filter((each) => each.id !== id) }))}
              onKept={(ids) => setSession((before) => ({ ...before, kept: new Set([...before.kept, ...ids]) }))}
              onForget={() => setSession(freshSession())}
            />
          ) : null}
          <DeskSetup choice={choice} problem={recording.problem} onChoice={choose} onStart={recording.start} onPhoto={setPhoto} />
          <p className="soft small">{still.staysHere}</p>
        </div>
      )}
    </Page>
  );
}
