import { type SetComparison, setAgainstSet, sideAgainstSide } from '../../compare/set-against-set.ts';
import type { Result } from '../../result.ts';
import { GlideDifferences } from '../glide/glide-differences.tsx';
import { exerciseWords } from '../parts/exercise-words.ts';
import { limbsOf } from '../parts/limb-words.ts';
import { Page } from '../parts/page.tsx';
import { whenIn } from '../parts/when.ts';
import { useStoredSet } from '../result/use-stored-set.ts';
import type { ShownSet } from '../services.ts';
import { useWords } from '../words/words-context.tsx';
import { comparableOf, wayOf } from './comparable.ts';
import './compare-screen.css';
import type { CompareWords } from '../words/compare-words.ts';
import { useSeenByWords } from '../words/seen-by-catalogues.ts';
import { Differences } from './differences.tsx';
import { RangeDots } from './range-dots.tsx';

/** Both sets against each other: two legs, or one leg on two occasions. */
function comparisonOf(set: ShownSet, other: ShownSet): Result<SetComparison, { readonly kind: keyof CompareWords['cannot'] }> {
  const [own, reference] = [comparableOf(set), comparableOf(other)];
  if (!own || !reference) return { ok: false, error: { kind: 'own-exercise' } };
  return own.side === reference.side ? setAgainstSet(own, reference) : sideAgainstSide(own, reference);
}

function Comparison({ set, other }: { readonly set: ShownSet; readonly other: ShownSet }) {
  const words = useWords();
  const { compare, exercises, locale } = words;
  const sides = limbsOf(set.exercise, words);
  const compared = comparisonOf(set, other);
  const { twoWays, healthyToes } = useSeenByWords();
  const mixed = wayOf(set) !== wayOf(other);
  const nameOf = (s: ShownSet) => (set.side === other.side ? whenIn(locale, s.startedAt) : sides[s.side].leg);
  const names = { set: nameOf(set), other: nameOf(other) };
  const [glide, otherGlide] = [set.result?.glide, other.result?.glide];
  const glides = glide && otherGlide ? { glide, other: otherGlide } : null;
  const days = [set, other].map((s) => whenIn(locale, s.startedAt));
  const lead =
    set.side === other.side ? undefined : days.map((day, i) => `${sides[(i === 0 ? set : other).side].leg}: ${day}`).join(' · ');
  const title = compare.title(exerciseWords(set, exercises).plural, set.side === other.side ? sides[set.side].legLower : null);
  return (
    <Page className="compare" title={title} lead={lead} back={`/set/${set.id}`}>
      <div className="compare-parts">
        {compared.ok ? (
          <>
            <Differences
              comparison={compared.value}
              names={names}
              legs={set.side !== other.side}
              exercise={set.exercise}
              unsure={mixed ? twoWays : null}
            />
            <RangeDots
              sets={[
                { name: names.set, set },
                { name: names.other, set: other },
              ]}
              limitDeg={compared.value.range.limitDeg}
            />
          </>
        ) : (
          <p>{compare.cannot[compared.error.kind]}</p>
        )}
        {glides ? <GlideDifferences {...glides} names={names} /> : null}
        {compared.ok ? <p className="soft">{compare.error}</p> : null}
        {compared.ok && set.side !== other.side ? (
          <p className="soft">{set.exercise === 'toe-lift' ? healthyToes : compare.healthy}</p>
        ) : null}
      </div>
    </Page>
  );
}

/** Two stored sets of one exercise side by side. */
export function CompareScreen({ id, other }: { readonly id: string; readonly other: string }) {
  const { app, problems } = useWords();
  const first = useStoredSet(id);
  const second = useStoredSet(other);
  if (first.set && second.set) return <Comparison set={first.set} other={second.set} />;
  const problem = first.problem ?? second.problem;
  if (!problem) return <p className="heard">{app.loading}</p>;
  const words = problems[problem.kind](problem.detail ?? '');
  return (
    <Page className="compare" title={words.title} lead={words.todo} back="/">
      {null}
    </Page>
  );
}
