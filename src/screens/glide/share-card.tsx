import { glideCount } from '../../dose/glide-sets.ts';
import type { GlideResult } from '../../measure/set-result.ts';
import { useGlideWords } from '../words/glide-catalogues.ts';
import { useWords } from '../words/words-context.tsx';

/** Which share of the cycles slid, as one of the figures at the head of a result. */
export function ShareCard({ glide }: { readonly glide: GlideResult }) {
  const { numbers } = useGlideWords();
  const { locale } = useWords();
  const { slide, cycles, slideShare } = glideCount([glide]);
  const percent = new Intl.NumberFormat(locale, { style: 'percent', maximumFractionDigits: 0 });
  return (
    <div>
      <dt>{numbers.share}</dt>
      <dd className="numbers">{slideShare === null ? '–' : percent.format(slideShare)}</dd>
      <dd className="soft small">{numbers.shareHint(slide, cycles)}</dd>
    </div>
  );
}
