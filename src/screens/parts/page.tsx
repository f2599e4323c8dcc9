import { type ReactNode, useEffect, useRef } from 'react';
import { Link, useLocation } from 'wouter';
import { usePerson } from '../people/person-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { Icon } from './icon.tsx';
import './page.css';
import { VisitNotice } from './visit-notice.tsx';
import { Wordmark } from './wordmark.tsx';

/** Sets the window's title, and moves the focus to the heading so that a new screen is read from its top. */
export function useScreenTitle(title: string) {
  const heading = useRef<HTMLHeadingElement>(null);
  const { app } = useWords();
  const [place] = useLocation();
  // biome-ignore lint/correctness/useExhaustiveDependencies: another place may have the same title.
  useEffect(() => {
    document.title = `${title} · ${app.name}`;
    heading.current?.focus({ preventScroll: true });
    window.scrollTo(0, 0);
  }, [title, app.name, place]);
  return heading;
}

interface PageProps {
  readonly title: string;
  /** Shown under the title. */
  readonly lead?: ReactNode;
  /** Where "back" leads; without it there is none. */
  readonly back?: string;
  /** Names the screen for its own styles. */
  readonly className: string;
  readonly children: ReactNode;
}

/** A screen that scrolls: the name of the program, a way back, one heading. */
export function Page({ title, lead, back, className, children }: PageProps) {
  const heading = useScreenTitle(title);
  const { app, people } = useWords();
  const whose = usePerson();
  return (
    <div className={`page ${className}`}>
      <header className="page-top">
        {back === undefined ? (
          <Wordmark />
        ) : (
          <Link href={back} className="button" data-look="quiet">
            <Icon name="back" />
            {app.back}
          </Link>
        )}
        {whose && whose.person.name !== title ? (
          <p className="page-whose">
            <Icon name="person" />
            {people.person.whose(whose.person.name)}
          </p>
        ) : null}
      </header>
      <main>
        <div className="page-title">
          <h1 ref={heading} tabIndex={-1}>
            {title}
          </h1>
          {lead === undefined ? null : <p className="page-lead soft">{lead}</p>}
        </div>
        <VisitNotice />
        {children}
      </main>
    </div>
  );
}
