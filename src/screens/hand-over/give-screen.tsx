import { useState } from 'react';
import { Link } from 'wouter';
import { givenPlan } from '../../dose/given-plan.ts';
import type { Prescription } from '../../dose/prescription.ts';
import { encodePlan, encodePlanCode, TAKE_ADDRESS } from '../../record/plan-transfer.ts';
import { DayProblem } from '../day/day-problem.tsx';
import { useDay } from '../day/use-day.ts';
import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import { saveFile } from '../parts/save-file.ts';
import { TherapistName } from '../parts/therapist-name.tsx';
import { useBack } from '../people/person-context.tsx';
import { useWords } from '../words/words-context.tsx';
import { GiveLink } from './give-link.tsx';
import './give-screen.css';
import { PlanFault } from './plan-fault.tsx';
import { PlanSheet } from './plan-sheet.tsx';
import { fitsQrCode, QrCode } from './qr-code.tsx';

/** A host that means "this machine" on every machine. */
const isOnlyHere = (host: string): boolean => /^((.+\.)?localhost|127(\.\d+){3}|\[::1\])$/.test(host);

/** The plan under the name that was typed in. A name makes it a therapist's plan. */
function named(prescription: Prescription, typed: string): Prescription {
  const name = typed.trim();
  const role = name === '' ? prescription.by.role : 'therapist';
  return { ...prescription, by: { role, name } };
}

function Give({ prescription }: { readonly prescription: Prescription }) {
  const { give, says } = useWords().handOver;
  const [name, setName] = useState(prescription.by.name);
  const [nameInLink, setNameInLink] = useState(true);
  const plan = named(prescription, name);
  const file = encodePlan(plan);
  const code = encodePlanCode(plan, { named: nameInLink });
  if (!file.ok) return <PlanFault error={file.error} />;
  const { origin, pathname, hostname, host } = window.location;
  const link = code.ok ? `${origin}${pathname}${TAKE_ADDRESS}${code.value}` : null;
  const fitting = link !== null && fitsQrCode(link) ? link : null;
  const day = givenPlan(plan).writtenAt.slice(0, 10);
  return (
    <>
      <div className="give-parts">
        {plan.origin === 'example' ? (
          <Notice icon="person" look="calm">
            <p>{says.invented}</p>
          </Notice>
        ) : null}
        <div className="give-name">
          <TherapistName label={give.name} value={name} onChange={setName} />
          <p className="soft small">{give.nameHint}</p>
          {name.trim() === '' ? null : (
            <label className="give-named">
              <input type="checkbox" checked={nameInLink} onChange={(e) => setNameInLink(e.target.checked)} />
              {give.named}
            </label>
          )}
        </div>
        {isOnlyHere(hostname) ? (
          <Notice icon="warning" look="caution">
            <p>{give.onlyHere(host)}</p>
          </Notice>
        ) : null}
        <ul className="give-ways">
          <li>
            <h2>{give.print}</h2>
            <p>{give.printAbout}</p>
            <button type="button" className="button" data-look="main" onClick={() => window.print()}>
              {give.printDo}
            </button>
          </li>
          <li>
            <h2>{give.file}</h2>
            <p>{give.fileAbout}</p>
            <button
              type="button"
              className="button"
              onClick={() => saveFile(`${give.fileName}-${day}.json`, file.value, 'application/json')}
            >
              {give.fileSave}
            </button>
          </li>
          {code.ok && link !== null ? <GiveLink key={link} link={link} /> : null}
          {code.ok ? null : (
            <li>
              <PlanFault error={code.error} />
            </li>
          )}
          <li>
            <h2>{give.qr}</h2>
            <p>{fitting === null ? give.qrTooLarge : give.qrAbout}</p>
            {fitting === null ? null : <QrCode text={fitting} label={give.qrLabel} />}
          </li>
        </ul>
      </div>
      <PlanSheet plan={givenPlan(plan)} link={isOnlyHere(hostname) ? null : fitting} />
    </>
  );
}

/** The plan that holds, to be given away: on paper, as a file, as a link, as a QR code. */
export function GiveScreen() {
  const back = useBack('/today');
  const { app, handOver, day } = useWords();
  const { log, today, problem } = useDay();
  return (
    <Page className="give" title={handOver.give.title} lead={handOver.give.lead} back={back}>
      <DayProblem problem={problem} />
      {!log && !problem ? <p className="heard">{app.loading}</p> : null}
      {today ? <Give key={today.prescription.id} prescription={today.prescription} /> : null}
      {log && !today ? (
        <div className="give-parts">
          <p>{handOver.give.none}</p>
          <Link href="/plan" className="button" data-look="main">
            {day.makePlan}
          </Link>
        </div>
      ) : null}
    </Page>
  );
}
