import { Group } from '@visx/group';
import { Bar } from '@visx/shape';
import { glideCount } from '../../dose/glide-sets.ts';
import type { AngleCurve } from '../../measure/set-result.ts';
import type { GlideCycle } from '../../reps/glide-coordination.ts';
import { type CurveArea, CurveDrawing } from '../result/curve-drawing.tsx';
import { useGlideWords } from '../words/glide-catalogues.ts';
import './glide-curve.css';

/** Least room for a cycle's number, px. */
const NUMBER_ROOM = 16;
/** How high the strip is that says the pattern, px. */
const STRIP = 10;

interface CycleMarkProps {
  readonly cycle: GlideCycle;
  readonly number: number;
  readonly area: CurveArea;
}

/** One cycle: its time as a band whose fill says what it was, its number above. */
function CycleMark({ cycle: { startMs, endMs, pattern }, number, area: { top, bottom, x } }: CycleMarkProps) {
  const from = x(startMs / 1000);
  const width = Math.max(2, x(endMs / 1000) - from - 1);
  return (
    <Group className="cycle-mark" data-pattern={pattern}>
      <Bar x={from} y={top} width={width} height={bottom - top} fill={pattern === 'tension' ? 'url(#hatch)' : undefined} />
      <Bar className="cycle-strip" x={from} y={top} width={width} height={STRIP} />
      {width >= NUMBER_ROOM ? (
        <text x={from + width / 2} y={top - 10}>
          {number}
        </text>
      ) : null}
    </Group>
  );
}

const PATTERNS = ['slide', 'tension', 'unclear'] as const;

/** The foot's angle through a set of glides, each cycle marked by what it was. The table of cycles holds the same in numbers. */
export function GlideCurve({ curve, cycles }: { readonly curve: AngleCurve; readonly cycles: readonly GlideCycle[] }) {
  const words = useGlideWords();
  const { slide, tension, unclear } = glideCount([{ cycles }]);
  return (
    <section className="result-curve" aria-labelledby="glide-curve-title">
      <div className="result-curve-head">
        <h2 id="glide-curve-title">{words.curve.title}</h2>
        <ul className="curve-legend small">
          {PATTERNS.map((pattern) => (
            <li key={pattern}>
              <span className="curve-swatch cycle-swatch" data-pattern={pattern} aria-hidden="true" />
              {words.marks.patterns[pattern]}
            </li>
          ))}
        </ul>
      </div>
      <CurveDrawing
        curve={curve}
        peaksDeg={[]}
        label={words.curve.alt(slide, tension, unclear)}
        marks={(area) => cycles.map((cycle, i) => <CycleMark key={cycle.startMs} cycle={cycle} number={i + 1} area={area} />)}
      />
      <p className="soft small">{words.curve.hint}</p>
    </section>
  );
}
