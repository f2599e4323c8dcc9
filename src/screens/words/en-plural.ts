export const plural = new Intl.PluralRules('en');

export const smallOnes = (n: number): string => `${n} small ${plural.select(n) === 'one' ? 'one' : 'ones'}`;
export const times = (n: number): string => (plural.select(n) === 'one' ? 'repetition' : 'repetitions');
export const counted = (n: number, one: string, many: string): string => `${n} ${plural.select(n) === 'one' ? one : many}`;
