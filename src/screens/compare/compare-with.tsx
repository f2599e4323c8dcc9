import { Link } from 'wouter';
import { Icon } from '../parts/icon.tsx';
import { whenIn } from '../parts/when.ts';
import type { ShownSet } from '../services.ts';
import { useStoredSets } from '../start/use-stored-sets.ts';
import { useSeenByWords } from '../words/seen-by-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import { companionsOf, wayOf } from './comparable.ts';
import './compare-with.css';

/** How many of each kind are offered. Chosen: the latest ones are what a comparison is about. */
const OFFERED = 3;

/** The sets that this one can be compared with: the other leg first, then earlier ones of the same leg. Nothing when there is none. */
export function CompareWith({ set }: { readonly set: ShownSet }) {
  const { compare, locale } = useWords();
  const { way } = useSeenByWords();
  const stored = useStoredSets();
  if (!stored?.ok || set.exercise === 'own') return null;
  const { otherLeg, sameLeg } = companionsOf(set, stored.value.sets);
  const offered = [
    ...otherLeg.slice(0, OFFERED).map((other) => ({ other, what: compare.otherLeg })),
    ...sameLeg.slice(0, OFFERED).map((other) => ({ other, what: compare.sameLeg })),
  ];
  return (
    <section className="compare-with" aria-labelledby="compare-with-title">
      <h2 id="compare-with-title">{compare.with}</h2>
      {offered.length === 0 ? <p className="soft">{compare.nothing}</p> : null}
      <ul>
        {offered.map(({ other, what }) => (
          <li key={other.id}>
            <Link href={`/compare/${set.id}/${other.id}`} className="button">
              {what(whenIn(locale, other.startedAt))}
              {wayOf(other) === wayOf(set) ? '' : ` (${way[wayOf(other)]})`}
              <Icon name="forward" />
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}
