import { type Agreement, agreementOf } from './agreement.ts';
import type { MatchedRep } from './matched-reps.ts';

/** One source's repetitions in the plot. */
export interface PlotSeries {
  readonly name: string;
  readonly matched: readonly MatchedRep[];
  /** Filled points, and the lines of bias and limits, are for the source that is reported. */
  readonly reported: boolean;
}

const WIDTH = 640;
const HEIGHT = 360;
const LEFT = 64;
const RIGHT = 16;
const TOP = 40;
const BOTTOM = 52;
/** Okabe and Ito's blue and orange, told apart by colour-blind eyes; the marks differ as well. */
const BLUE = '#0072b2';
const ORANGE = '#b35900';

interface Scale {
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
}

/** An axis over `values` with about six round ticks. */
function scaleOver(values: readonly number[]): Scale {
  const low = Math.min(...values);
  const high = Math.max(...values);
  const rough = (high - low || 1) / 6;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5].find((x) => x * power >= rough) ?? 10) * power;
  const from = Math.floor(low / step);
  const to = Math.max(from + 1, Math.ceil(high / step));
  const ticks = Array.from({ length: to - from + 1 }, (_, i) => Number(((from + i) * step).toFixed(6)));
  return { low: ticks[0] as number, high: ticks.at(-1) as number, ticks };
}

const at = (value: number): string => value.toFixed(1);
const signed = (value: number): string => (value > 0 ? `+${value}` : String(value).replace('-', '\u2212'));

const limitLines = ({ bias, limits }: Agreement, y: (deg: number) => number): string => {
  const line = (deg: number, dash: string, label: string) => {
    const place = `x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${at(y(deg))}" y2="${at(y(deg))}"`;
    const words = `<text x="${WIDTH - RIGHT - 4}" y="${at(y(deg) - 4)}" text-anchor="end" fill="${BLUE}">${label}</text>`;
    return `<line ${place} stroke="${BLUE}" stroke-dasharray="${dash}"/>${words}`;
  };
  const ends = limits ? [line(limits[1], '6 4', '95 % limits'), line(limits[0], '6 4', '')] : [];
  return [line(bias, 'none', 'bias'), ...ends].join('\n');
};

/** Differences against the truth (Bland and Altman) of one exercise as a drawing: one mark a repetition. */
export function differencePlot(title: string, series: readonly PlotSeries[]): string {
  const all = series.flatMap(({ matched }) => matched);
  const reported = series.find((s) => s.reported);
  const agreement = reported ? agreementOf(reported.matched.map((m) => m.rangeErrorDeg)) : null;
  const xScale = scaleOver(all.map((m) => m.trueRangeDeg));
  const yScale = scaleOver([0, ...all.map((m) => m.rangeErrorDeg), ...(agreement?.limits ?? [])]);
  const x = (v: number) => LEFT + ((v - xScale.low) / (xScale.high - xScale.low)) * (WIDTH - LEFT - RIGHT);
  const y = (v: number) => HEIGHT - BOTTOM - ((v - yScale.low) / (yScale.high - yScale.low)) * (HEIGHT - TOP - BOTTOM);
  const mark = ({ trueRangeDeg, rangeErrorDeg }: MatchedRep, filled: boolean) => {
    const [cx, cy] = [x(trueRangeDeg), y(rangeErrorDeg)];
    return filled
      ? `<circle cx="${at(cx)}" cy="${at(cy)}" r="4" fill="${BLUE}" fill-opacity="0.7"/>`
      : `<path d="M${at(cx - 4)} ${at(cy - 4)}l8 8m0 -8l-8 8" stroke="${ORANGE}" fill="none" stroke-width="1.5"/>`;
  };
  const legend = series.map(({ name, reported: filled }, i) => {
    const left = LEFT + i * 170;
    const sign = filled
      ? `<circle cx="${left + 5}" cy="26" r="4" fill="${BLUE}"/>`
      : `<path d="M${left + 1} 22l8 8m0 -8l-8 8" stroke="${ORANGE}" stroke-width="1.5"/>`;
    return `${sign}<text x="${left + 16}" y="30">${name}</text>`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" role="img" font-family="sans-serif" font-size="12">`,
    `<title>${title}</title>`,
    `<rect width="${WIDTH}" height="${HEIGHT}" fill="#fff"/>`,
    `<g stroke="#e4e4e4">`,
    ...yScale.ticks.map((t) => `<line x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${at(y(t))}" y2="${at(y(t))}"/>`),
    `</g>`,
    `<line x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${at(y(0))}" y2="${at(y(0))}" stroke="#666"/>`,
    `<g fill="#333">`,
    ...yScale.ticks.map((t) => `<text x="${LEFT - 8}" y="${at(y(t) + 4)}" text-anchor="end">${signed(t)}</text>`),
    ...xScale.ticks.map((t) => `<text x="${at(x(t))}" y="${HEIGHT - BOTTOM + 18}" text-anchor="middle">${t}</text>`),
    `<text x="${(LEFT + WIDTH - RIGHT) / 2}" y="${HEIGHT - 12}" text-anchor="middle">true range, degrees</text>`,
    `<text transform="translate(16 ${(TOP + HEIGHT - BOTTOM) / 2}) rotate(-90)" text-anchor="middle">measured minus true, degrees</text>`,
    ...legend,
    `</g>`,
    ...series.flatMap(({ matched, reported: filled }) => matched.map((m) => mark(m, filled))),
    ...(agreement ? [limitLines(agreement, y)] : []),
    `</svg>`,
    '',
  ].join('\n');
}
