export const plural = new Intl.PluralRules('es');

export const smallOnes = (n: number): string => `${n} ${plural.select(n) === 'one' ? 'pequeña' : 'pequeñas'}`;
export const times = (n: number): string => (plural.select(n) === 'one' ? 'repetición' : 'repeticiones');
export const counted = (n: number, one: string, many: string): string => `${n} ${plural.select(n) === 'one' ? one : many}`;
