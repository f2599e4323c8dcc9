import { Link } from 'wouter';
import { Icon } from '../parts/icon.tsx';
import { Page } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import { Caution } from './caution.tsx';
import { LanguageSwitch } from './language-switch.tsx';
import { SourceChoices } from './source-choices.tsx';
import './start-screen.css';
import { StoredSets } from './stored-sets.tsx';

/** The first screen: three ways to begin, and the sets there are. */
export function StartScreen() {
  const { app, start, desk, lock } = useWords();
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
      <Link href="/desk" className="start-today">
        <span>
          <strong>{desk.open}</strong>
          <span className="soft">{desk.openAbout}</span>
        </span>
        <Icon name="forward" size={28} />
      </Link>
      <Link href="/lock" className="start-today">
        <span>
          <strong>{lock.open}</strong>
          <span className="soft">{lock.openAbout}</span>
        </span>
        <Icon name="forward" size={28} />
      </Link>
      <LanguageSwitch />
    </Page>
  );
}
