import type { RecordFile } from '../../record/file/read-record.ts';
import type { Brought } from '../../record/file/record-store.ts';
import { whenIn } from '../parts/when.ts';
import { useWords } from '../words/words-context.tsx';
import { useRecordWords } from './use-record-words.ts';

interface FoundRecordProps {
  readonly record: RecordFile;
  /** What taking it in would do; null: not known yet, or it can't be taken in. */
  readonly brought: Brought | null;
}

/** What a file holds, before anything of it is kept. */
export function FoundRecord({ record, brought }: FoundRecordProps) {
  const { bring } = useRecordWords();
  const { locale } = useWords();
  const { manifest, diary, span } = record;
  const checkIns = diary.filter(({ kind }) => kind === 'check-in').length;
  const when = (at: string) => whenIn(locale, at);
  return (
    <section className="record-found" aria-label={bring.found}>
      <h2>{bring.found}</h2>
      <dl>
        <dt>{bring.whose}</dt>
        <dd>{manifest.person.name ?? bring.unnamed}</dd>
        <dt>{bring.period}</dt>
        <dd>{span ? bring.fromTo(when(span.from), when(span.to)) : bring.nothing}</dd>
        <dt>{bring.holds}</dt>
        <dd>{bring.counts(manifest.counts.sets, checkIns, diary.length - checkIns)}</dd>
        {brought ? (
          <>
            <dt>{bring.news}</dt>
            <dd>
              {brought.sets.fresh + brought.entries.fresh + brought.sets.grown + brought.removed.here === 0
                ? bring.noNews
                : [
                    ...(brought.sets.fresh + brought.entries.fresh > 0
                      ? [bring.fresh(brought.sets.fresh, brought.entries.fresh)]
                      : []),
                    ...(brought.sets.grown > 0 ? [bring.grown(brought.sets.grown)] : []),
                  ].join('; ')}
            </dd>
          </>
        ) : null}
      </dl>
      {brought && brought.removed.here > 0 ? <p>{bring.removedThere(brought.removed.here)}</p> : null}
      {brought && brought.removed.coming > 0 ? <p>{bring.staysRemoved(brought.removed.coming)}</p> : null}
      {brought && brought.conflicts > 0 ? <p>{bring.conflicts(brought.conflicts)}</p> : null}
    </section>
  );
}
