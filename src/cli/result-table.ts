import type { MeasuredRep, SetResult } from '../measure/set-result.ts';
import { footTapLines } from './foot-tap-lines.ts';
import { glideLines } from './glide-lines.ts';

const HEADS = ['rep', 'start s', 'peak s', 'end s', 'from deg', 'peak deg', 'range deg', '+/-', 'hold s', 'counts', 'notes'];

const row = (rep: MeasuredRep): readonly string[] => {
  const seconds = (x: number) => (x / 1000).toFixed(2);
  // Never -0.0.
  const degrees = (x: number) => (Math.round(10 * x) / 10 + 0).toFixed(1);
  return [
    String(rep.number),
    seconds(rep.startMs),
    seconds(rep.peakMs),
    seconds(rep.endMs),
    degrees(rep.startDeg),
    degrees(rep.peakDeg),
    degrees(rep.rangeDeg),
    degrees(rep.uncertaintyDeg),
    seconds(rep.holdMs),
    rep.complete ? 'yes' : 'no',
    rep.flags.join(' '),
  ];
};

/** What only a leg raise has: where the foot stood, where symptoms began. */
function legRaiseLines({ reps, onset }: SetResult): readonly string[] {
  const feet = reps.flatMap(({ footDeg, footUncertaintyDeg }) => (footDeg === null ? [] : [{ footDeg, footUncertaintyDeg }]));
  const error = feet[0]?.footUncertaintyDeg ?? 0;
  const at = onset?.angleDeg == null ? 'an angle that was not measured' : `${onset.angleDeg.toFixed(1)} degrees`;
  return [
    ...(feet.length > 0
      ? [`foot at the peaks, up positive: ${feet.map((f) => f.footDeg.toFixed(0)).join(', ')} (+/- ${error} degrees, rough)`]
      : []),
    ...(onset ? [`symptoms began at ${(onset.tMs / 1000).toFixed(2)} s, at ${at}`] : []),
  ];
}

/** How long the forefoot stayed up in each heel stand. */
function heelStandLines({ reps }: SetResult): readonly string[] {
  const seconds = (x: number) => (x / 1000).toFixed(2);
  const stands = reps.flatMap(({ upMs, sankAfterMs }) =>
    upMs === null ? [] : [`${seconds(upMs)} s${sankAfterMs === null ? '' : ` (sank after ${seconds(sankAfterMs)} s)`}`],
  );
  return stands.length > 0 ? [`forefoot up for: ${stands.join(', ')}`] : [];
}

/** A set's result as a table for people. */
export function resultTable(result: SetResult): string {
  const rows = [HEADS, ...result.reps.map(row)];
  const widths = HEADS.map((_, i) => Math.max(...rows.map((r) => (r[i] ?? '').length)));
  const lines = rows.map((r) =>
    r
      .map((cell, i) => cell.padStart(widths[i] ?? 0))
      .join('  ')
      .trimEnd(),
  );
  const { summary } = result;
  const range = summary
    ? `, median range ${summary.medianRangeDeg.toFixed(1)} +/- ${summary.uncertaintyDeg.toFixed(1)} degrees (95 %)`
    : '';
  return [
    `${result.exercise}, ${result.side}: ${result.count} complete, ${result.partialCount} partial${range}`,
    ...(result.reps.length > 0 ? lines : []),
    ...footTapLines(result),
    ...legRaiseLines(result),
    ...heelStandLines(result),
    ...glideLines(result),
    `${result.framesUsed} of ${result.frames} frames measured`,
    ...(result.quality.warnings.length > 0 ? [`careful: ${result.quality.warnings.join(', ')}`] : []),
    '',
  ].join('\n');
}
