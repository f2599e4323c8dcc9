import { useCallback, useState } from 'react';
import { Link } from 'wouter';
import { localTime } from '../../dose/local-time.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { clockNow } from '../parts/clock-now.ts';
import { Icon } from '../parts/icon.tsx';
import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import { useRecordWords } from '../record/use-record-words.ts';
import { knownServer } from '../server/known-server.ts';
import { ServerIntake } from '../server/server-intake.tsx';
import { useServerWords } from '../words/server-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { orderedLines, type PersonLine } from './people-lines.ts';
import { PeopleList } from './people-list.tsx';
import './people-screen.css';
import { PEOPLE_ORDERS, type PeopleOrder, usePeopleView } from './people-view.ts';
import { usePeople } from './use-people.ts';

/** Fewer people are seen at a glance: nothing to search or to order. Chosen. */
const MANY = 5;

function Finder({ lines }: { readonly lines: readonly PersonLine[] }) {
  const { people } = useWords();
  const { search, order } = usePeopleView();
  return (
    <div className="people-finder">
      <label>
        {people.search}
        <input type="search" value={search} onChange={({ target }) => usePeopleView.setState({ search: target.value })} />
      </label>
      <label>
        {people.order}
        <select value={order} onChange={({ target }) => usePeopleView.setState({ order: target.value as PeopleOrder })}>
          {PEOPLE_ORDERS.map((each) => (
            <option key={each} value={each}>
              {people.orders[each]}
            </option>
          ))}
        </select>
      </label>
      <p className="people-counted" role="status">
        {people.counted(lines.length, lines.filter(({ attention }) => attention.length > 0).length)}
      </p>
    </div>
  );
}

/** Everybody whom the therapist looks after on this machine, who needs them first. */
export function PeopleScreen() {
  const { people, locale } = useWords();
  const { bring } = useRecordWords();
  const [round, setRound] = useState(0);
  const { lines, damaged, problem } = usePeople(round);
  const { intake } = useServerWords();
  const again = useCallback(() => setRound((n) => n + 1), []);
  const { search, order } = usePeopleView();
  const { day } = localTime(clockNow());
  const isMany = lines !== null && lines.length >= MANY;
  const shown = lines && orderedLines(lines, isMany ? search : '', order, locale);
  return (
    <Page className="people" title={people.title} lead={knownServer() ? intake.lead : people.lead} back="/">
      <DayProblem problem={problem} />
      {damaged > 0 ? (
        <Notice icon="warning" look="caution">
          <p>{people.damaged(damaged)}</p>
        </Notice>
      ) : null}
      <div className="people-ways">
        <Link href="/people/new" className="button" data-look="main">
          <Icon name="plus" />
          {people.add}
        </Link>
        <Link href="/people/bring" className="button">
          <Icon name="file" />
          {bring.open.anybody.name}
        </Link>
      </div>
      {knownServer() ? <ServerIntake onNew={again} /> : null}
      {lines && isMany ? <Finder lines={lines} /> : null}
      {lines?.length === 0 ? <p>{people.none}</p> : null}
      {shown?.length === 0 && lines && lines.length > 0 ? <p>{people.noMatch(search.trim())}</p> : null}
      {shown && shown.length > 0 ? <PeopleList lines={shown} today={day} /> : null}
    </Page>
  );
}
