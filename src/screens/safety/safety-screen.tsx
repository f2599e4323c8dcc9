import { Notice } from '../parts/notice.tsx';
import { Page } from '../parts/page.tsx';
import { useWords } from '../words/words-context.tsx';
import './safety-screen.css';

function Signs({ signs }: { readonly signs: readonly string[] }) {
  return (
    <ul className="signs">
      {signs.map((sign) => (
        <li key={sign}>{sign}</li>
      ))}
    </ul>
  );
}

/** The signs of pressure on the nerves at the end of the spine, in plain words. Source: the national pathways' red flags. */
export function SafetyScreen() {
  const { safety } = useWords();
  return (
    <Page className="safety" title={safety.title} back="/">
      <div className="safety-parts">
        <p className="safety-lead">{safety.lead}</p>
        <Signs signs={safety.signs} />
        <Notice icon="warning" look="fault">
          <p className="safety-todo">{safety.todo}</p>
        </Notice>
        <h2>{safety.alsoTitle}</h2>
        <Signs signs={safety.also} />
        <p className="soft">{safety.limits}</p>
      </div>
    </Page>
  );
}
