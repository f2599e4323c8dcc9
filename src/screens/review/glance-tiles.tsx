import type { ReactNode } from 'react';
import type { Progress } from '../../dose/progress.ts';
import { symptomTrend } from '../../dose/symptom-trend.ts';
import type { Place } from '../../symptoms/place.ts';
import { useWords } from '../words/words-context.tsx';
import { directionOf, SIGNS } from './direction.ts';
import { morningsOf } from './mornings.ts';
import type { Reviewed } from './use-review.ts';

function Tile({ name, value, notes }: { readonly name: string; readonly value: ReactNode; readonly notes: readonly string[] }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd className="review-value numbers">{value}</dd>
      {notes.map((note) => (
        <dd key={note} className="soft small">
          {note}
        </dd>
      ))}
    </div>
  );
}

function Strength({ found }: { readonly found: Progress }) {
  const { review, locale } = useWords();
  const { glance } = review;
  const trend = symptomTrend(found.symptoms);
  if (!trend) return <Tile name={glance.strength} value="–" notes={[glance.notEnough]} />;
  const points = new Intl.NumberFormat(locale, { maximumFractionDigits: 1 });
  const direction = directionOf(trend.change, trend.verdict);
  return (
    <Tile
      name={glance.strength}
      value={
        <>
          <span aria-hidden="true">{SIGNS[direction]}</span>{' '}
          {glance.ofTen(points.format(trend.earlier), points.format(trend.later))}
        </>
      }
      notes={[glance.strengthVerdict[direction](points.format(trend.limit)), glance.strengthHow(trend.daysEach)]}
    />
  );
}

function Where({ found: { shift } }: { readonly found: Progress }) {
  const { review, feel, report } = useWords();
  const { glance } = review;
  const placeIn = (place: Place | null) =>
    place ? `${feel.regions[place.region]}, ${report.sides[place.side]}` : glance.nowhere;
  if (shift.kind === 'unknown') return <Tile name={glance.place} value={glance.shift.unknown} notes={[glance.notEnough]} />;
  const notes = shift.kind === 'unchanged' ? [placeIn(shift.to)] : [`${placeIn(shift.from)} → ${placeIn(shift.to)}`];
  return <Tile name={glance.place} value={glance.shift[shift.kind]} notes={[...notes, glance.placeHow]} />;
}

/** Symptoms, the days after and what was done, each in one figure. */
export function GlanceTiles({ found, reviewed: { log, from, to } }: { readonly found: Progress; readonly reviewed: Reviewed }) {
  const { review, progress, locale } = useWords();
  const { glance } = review;
  const mornings = morningsOf(log, from, to);
  const due = found.lines.reduce((sum, { setsDue }) => sum + setsDue, 0);
  const done = found.lines.reduce((sum, { setsDoneOfDue }) => sum + setsDoneOfDue, 0);
  const percent = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 0 });
  return (
    <dl className="review-tiles">
      <Strength found={found} />
      <Where found={found} />
      <Tile
        name={glance.nextDay}
        value={mornings.told === 0 ? glance.noMornings : glance.mornings(mornings.well, mornings.told)}
        notes={[
          ...(mornings.told > 0 ? [glance.notSettled(mornings.notSettled)] : []),
          ...(mornings.told + mornings.open > 0 ? [glance.unanswered(mornings.open)] : []),
        ]}
      />
      <Tile
        name={glance.done}
        value={due === 0 ? '–' : percent.format(done / due)}
        notes={[due === 0 ? progress.nothingDue : progress.setsOf(done, due)]}
      />
    </dl>
  );
}
