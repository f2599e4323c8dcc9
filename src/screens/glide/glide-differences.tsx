import { type DegFigure, type FigureDifference, figureDifference } from '../../compare/figure-difference.ts';
import { glideCount } from '../../dose/glide-sets.ts';
import type { GlideResult } from '../../measure/set-result.ts';
import type { Deg } from '../../units.ts';
import { PlainTable } from '../chart/value-table.tsx';
import { degreesIn } from '../result/degrees.ts';
import { useGlideWords } from '../words/glide-catalogues.ts';
import { useWords } from '../words/words-context.tsx';
import './glide-differences.css';

const figureOf = (valueDeg: Deg | null, uncertaintyDeg: Deg | null): DegFigure | null =>
  valueDeg === null || uncertaintyDeg === null ? null : { valueDeg, uncertaintyDeg };
const headOf = (glide: GlideResult) => figureOf(glide.headRangeDeg, glide.headUncertaintyDeg);
const legOf = ({ legHeld }: GlideResult) => legHeld && figureOf(legHeld.medianDeg, legHeld.uncertaintyDeg);
const between = (own: DegFigure | null, other: DegFigure | null): FigureDifference | null =>
  own && other ? figureDifference(own, other) : null;

interface GlideDifferencesProps {
  readonly glide: GlideResult;
  readonly other: GlideResult;
  readonly names: { readonly set: string; readonly other: string };
}

/** Two sets of glides side by side: share of slides, head and leg. A difference is called sure only where both figures have an error. */
export function GlideDifferences({ glide, other, names }: GlideDifferencesProps) {
  const { compare: words, numbers } = useGlideWords();
  const { compare, result, locale } = useWords();
  const degrees = degreesIn(locale);
  const percent = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 0 });
  const signed = new Intl.NumberFormat(locale, {
    signDisplay: 'exceptZero',
    minimumFractionDigits: 1,
    maximumFractionDigits: 1,
  });
  const share = (of: GlideResult) => {
    const { slide, cycles, slideShare } = glideCount([of]);
    return slideShare === null ? '–' : `${percent.format(slideShare)} (${slide}/${cycles})`;
  };
  const figure = (of: DegFigure | null) =>
    of ? result.rangeValue(degrees(of.valueDeg), degrees(of.uncertaintyDeg)) : numbers.notSeen;
  const row = (key: string, name: string, of: (each: GlideResult) => DegFigure | null) => {
    const found = between(of(glide), of(other));
    const said = found
      ? [`${signed.format(found.differenceDeg)}°`, words.verdicts[found.verdict](degrees(found.limitDeg))]
      : ['', ''];
    return { key, cells: [name, figure(of(glide)), figure(of(other)), ...said] };
  };
  const leg = between(legOf(glide), legOf(other));
  return (
    <section className="glide-differences" aria-labelledby="glide-differences-title">
      <h2 id="glide-differences-title">{words.title}</h2>
      <PlainTable
        columns={[compare.what, names.set, names.other, compare.difference, words.verdict]}
        rows={[
          { key: 'share', cells: [words.share, share(glide), share(other), '', words.noError] },
          row('head', words.head, headOf),
          row('leg', words.leg, legOf),
        ]}
      />
      {leg?.verdict === 'real' ? <p>{words.otherHeight}</p> : null}
    </section>
  );
}
