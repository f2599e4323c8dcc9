/** A number as it stands in the report; never "-0.0". */
export const plain = (x: number, places: number): string => x.toFixed(places).replace(/^-(?=0\.?0*$)/, '');

/** The same with its sign, also when positive. */
export const signed = (x: number, places = 2): string => {
  const text = plain(x, places);
  return Number(text) > 0 ? `+${text}` : text;
};
