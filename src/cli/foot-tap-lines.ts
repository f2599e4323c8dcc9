import { footTapProfile } from '../compare/foot-tap-profile.ts';
import type { SetResult } from '../measure/set-result.ts';

const rounded = (x: number, places: number): number => Math.round(x * 10 ** places) / 10 ** places + 0;

/** A set of foot taps by itself, as it stands in the result file; null for other exercises. See docs/result-format.md. */
export function footTapJson(result: SetResult) {
  if (result.exercise !== 'foot-tap') return null;
  const profile = footTapProfile({ ...result, exercise: result.exercise });
  if (!profile.ok) return null;
  const { tempo, hold, fatigue } = profile.value;
  return {
    tempo: tempo.ok ? { perMinute: rounded(tempo.value.perMinute, 1), variation: rounded(tempo.value.variation, 3) } : null,
    holdMs: hold && { median: rounded(hold.medianMs, 0), middleHalf: [rounded(hold.fromMs, 0), rounded(hold.toMs, 0)] },
    fatigue: fatigue.ok
      ? {
          rangeChangeDeg: rounded(fatigue.value.range.differenceDeg, 2),
          limitDeg: rounded(fatigue.value.range.limitDeg, 2),
          verdict: fatigue.value.range.verdict,
          tempoChangePerMinute: fatigue.value.tempo && rounded(fatigue.value.tempo.changePerMinute, 1),
          tempoVerdict: fatigue.value.tempo?.verdict ?? null,
        }
      : null,
  };
}

/** The same in words, for the table; no line for what the set is too short for. */
export function footTapLines(result: SetResult): readonly string[] {
  const taps = footTapJson(result);
  if (!taps) return [];
  const { tempo, holdMs, fatigue } = taps;
  const change = (x: number) => `${x > 0 ? '+' : ''}${x.toFixed(1)}`;
  const judged = { real: 'more than', 'within-error': 'within' } as const;
  return [
    ...(tempo ? [`tempo ${tempo.perMinute.toFixed(0)} a minute, uneven by ${(100 * tempo.variation).toFixed(0)} %`] : []),
    ...(holdMs ? [`held at the top for ${(holdMs.median / 1000).toFixed(2)} s in the middle`] : []),
    ...(fatigue
      ? [
          `last third against first: range ${change(fatigue.rangeChangeDeg)} degrees, ${judged[fatigue.verdict]} the error of ${fatigue.limitDeg.toFixed(1)}`,
        ]
      : []),
  ];
}
