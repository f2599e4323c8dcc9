import { Suspense } from 'react';
import { Link } from 'wouter';
import { StoredLink } from '../later-screens.tsx';
import { Icon } from '../parts/icon.tsx';
import { Page } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import { Caution } from './caution.tsx';
import { LanguageSwitch } from './language-switch.tsx';
import { SourceChoices } from './source-choices.tsx';
import './start-screen.css';
import { StoredSets } from './stored-sets.tsx';

const THERAPISTS = [
  ['people', '/people'],
  ['desk', '/desk'],
] as const;

/** The first screen: three ways to begin, and the sets there are. */
export function StartScreen() {
  const words = useWords();
  const { app, start, lock } = words;
  return (
    <Page className="start" title={start.title} lead={start.lead}>
      <Link href="/today" className="start-today">
        <span>
          <strong>{start.today}</strong>
          <span className="soft">{start.todayAbout}</span>
        </span>
        <Icon name="forward" size={28} />
      </Link>
      <SourceChoices />
      <p className="start-private">
        <Icon name="lock" />
        {app.staysHere}
      </p>
      <div className="start-below">
        <StoredSets />
        <Caution />
      </div>
      <section className="start-therapist">
        <h2>{start.therapist}</h2>
        {THERAPISTS.map(([part, href]) => (
          <Link key={part} href={href} className="start-today">
            <span>
              <strong>{words[part].open}</strong>
              <span className="soft">{words[part].openAbout}</span>
            </span>
            <Icon name="forward" size={28} />
          </Link>
        ))}
      </section>
      <Link href="/lock" className="start-today">
        <span>
          <strong>{lock.open}</strong>
          <span className="soft">{lock.openAbout}</span>
        </span>
        <Icon name="forward" size={28} />
      </Link>
      <Suspense>
        <StoredLink />
      </Suspense>
      <LanguageSwitch />
    </Page>
  );
}
