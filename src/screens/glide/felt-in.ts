import type { SymptomsAround } from '../../dose/symptoms-around.ts';
import { type Felt, placesOf } from '../../symptoms/felt.ts';
import type { FeelWords } from '../words/feel-words.ts';
import type { GlideWords } from '../words/glide-words.ts';
import type { ReportWords } from '../words/report-words.ts';

/** What was felt at one moment, in words: how strong, what and where, as far as it was told. */
export function feltIn(felt: Felt, words: GlideWords['felt'], feel: FeelWords, sides: ReportWords['sides']): readonly string[] {
  const { intensity, kinds } = felt;
  const strength = intensity === 'not-answered' ? words.unsaid : words.strength(intensity);
  const what = kinds === 'not-answered' ? [] : kinds.map((kind) => feel.kinds[kind]);
  const where = (placesOf(felt) ?? []).map(({ region, side }) => `${feel.regions[region]}, ${sides[side]}`);
  return [strength, ...(what.length > 0 ? [what.join(', ')] : []), ...where];
}

const strengthIn = (felt: Pick<Felt, 'intensity'> | null): string =>
  felt === null || felt.intensity === 'not-answered' ? '?' : String(felt.intensity);

/** Only how strong before and after a set, 0 to 10; a question mark where that was not told. Null: nothing was told. */
export const strengthsAround = ({ before, after }: SymptomsAround): string | null =>
  before || after ? `${strengthIn(before)} → ${strengthIn(after)}` : null;
