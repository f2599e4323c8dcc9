import type { GlideResult } from '../../measure/set-result.ts';
import { Notice } from '../parts/notice.tsx';
import { useGlideWords } from '../words/glide-catalogues.ts';
import type { GlideWords } from '../words/glide-words.ts';
import { GlideMarks } from './glide-marks.tsx';
import './glide-said.css';
import { type GlideVerdict, glideVerdict } from './glide-verdict.ts';

function headlineOf({ kind, slide, cycles }: GlideVerdict, said: GlideWords['said']): string {
  switch (kind) {
    case 'right-way':
      return said.rightWay(slide, cycles);
    case 'wrong-way':
      return said.wrongWay;
    case 'cannot-tell':
      return said.cannotTell;
    case 'no-cycle':
      return said.noCycle;
    default:
      return kind satisfies never;
  }
}

/** What else there is to the headline. */
function detailsOf({ kind, cycles, tension, unclear }: GlideVerdict, said: GlideWords['said']): readonly string[] {
  const wrong = kind === 'wrong-way' ? said.wrongWere(tension, cycles) : said.otherWayRound(tension);
  return [...(tension > 0 ? [wrong] : []), ...(unclear > 0 && kind !== 'cannot-tell' ? [said.notClear(unclear)] : [])];
}

/** How to do it next time: the right order when it was not always so, then what kept cycles from being judged. */
function todosOf({ cycles, tension, reasons }: GlideVerdict, said: GlideWords['said']): readonly string[] {
  const todos = [...(tension > 0 || cycles === 0 ? [said.how] : []), ...reasons.map((reason) => said.todo[reason])];
  return todos.length > 0 ? todos : [said.goOn];
}

/** What a set of glides was, in plain words: which way it went, each cycle as a mark, how to do it next time, and why. */
export function GlideSaid({ glide }: { readonly glide: GlideResult }) {
  const { said, stopped } = useGlideWords();
  const verdict = glideVerdict(glide);
  const details = detailsOf(verdict, said);
  return (
    <section className="glide-said" data-kind={verdict.kind} aria-labelledby="glide-said-title">
      <h2 id="glide-said-title">{headlineOf(verdict, said)}</h2>
      {details.length > 0 ? <p>{details.join(' ')}</p> : null}
      {glide.stopped ? (
        <Notice icon="stop" look="caution">
          <p>{stopped[glide.stopped]}</p>
        </Notice>
      ) : null}
      <GlideMarks cycles={glide.cycles} />
      <div className="glide-how">
        <div>
          <h3>{said.howTitle}</h3>
          {todosOf(verdict, said).map((todo) => (
            <p key={todo}>{todo}</p>
          ))}
        </div>
        <div>
          <h3>{said.whyTitle}</h3>
          <p className="soft">{said.why}</p>
        </div>
      </div>
    </section>
  );
}
