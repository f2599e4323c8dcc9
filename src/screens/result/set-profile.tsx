import { footTapProfile } from '../../compare/foot-tap-profile.ts';
import { shownCell } from '../parts/figure.tsx';
import { keptReps } from '../parts/kept-reps.ts';
import type { ShownSet } from '../services.ts';
import { useWords } from '../words/words-context.tsx';
import { degreesIn } from './degrees.ts';
import { secondsIn } from './seconds.ts';
import './set-profile.css';

/** A set of foot taps by itself: tempo, hold, and whether it tired. Nothing for other exercises and for sets without a result. */
export function SetProfile({ set }: { readonly set: ShownSet }) {
  const { compare, locale } = useWords();
  const { within } = compare;
  if (set.exercise !== 'foot-tap' || !set.result) return null;
  const profile = footTapProfile({ exercise: set.exercise, reps: keptReps(set), curve: set.result.curve });
  if (!profile.ok) return null;
  const { tempo, hold, fatigue } = profile.value;
  const signed = (places: number) =>
    new Intl.NumberFormat(locale, { signDisplay: 'exceptZero', minimumFractionDigits: places, maximumFractionDigits: places });
  return (
    <section className="set-profile" aria-labelledby="profile-title">
      <h2 id="profile-title">{within.title}</h2>
      <dl>
        <div>
          <dt>{within.tempo}</dt>
          <dd className="numbers">{tempo.ok ? within.tempoValue(Math.round(tempo.value.perMinute)) : within.none}</dd>
          {tempo.ok ? <dd className="soft small">{within.even(Math.round(100 * tempo.value.variation))}</dd> : null}
        </div>
        <div>
          <dt>{within.hold}</dt>
          <dd className="numbers">{hold ? within.holdValue(secondsIn(locale)(hold.medianMs)) : within.none}</dd>
          <dd className="soft small">{within.holdHint}</dd>
        </div>
        <div>
          <dt>{within.tiring}</dt>
          <dd className="numbers">
            {shownCell(fatigue.ok ? within.tiringChange(signed(1).format(fatigue.value.range.differenceDeg)) : within.none)}
          </dd>
          <dd className="soft small">
            {fatigue.ok
              ? within.tiringHint[fatigue.value.range.verdict](degreesIn(locale)(fatigue.value.range.limitDeg))
              : within.tooFew(fatigue.error.needed)}
          </dd>
          {fatigue.ok && fatigue.value.tempo ? (
            <dd className="soft small">
              {within.slower[fatigue.value.tempo.verdict](signed(0).format(fatigue.value.tempo.changePerMinute))}
            </dd>
          ) : null}
        </div>
      </dl>
    </section>
  );
}
