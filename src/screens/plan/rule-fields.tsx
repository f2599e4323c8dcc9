import type { ReactNode } from 'react';
import type { DoseChange, ProgressionRule, Threshold } from '../../dose/progression-rule.ts';
import { useWords } from '../words/words-context.tsx';
import { CountField } from './count-field.tsx';
import { LimitFields } from './limit-fields.tsx';
import { LIMIT_BOUNDS, THRESHOLD_BOUNDS } from './rule-bounds.ts';
import { ruleSays, stepSays, thresholdSays } from './rule-says.ts';

interface RuleFieldsProps {
  readonly rule: ProgressionRule;
  readonly onChange: (rule: ProgressionRule) => void;
}

const THRESHOLDS = ['goodDaysAfterFlare', 'clearRise', 'settledWithin', 'doneShare', 'freshDays'] as const;

/** A sentence of the rule and the number in it. */
const Says = ({ text, children }: { readonly text: string; readonly children: ReactNode }) => (
  <li>
    <p>{text}</p>
    {children}
  </li>
);

/** When the dose goes up or back, and between which limits: read in sentences at once, changed one number a sentence when unfolded. */
export function RuleFields({ rule, onChange }: RuleFieldsProps) {
  const { plan, prescribe } = useWords();
  const change = (part: Partial<ProgressionRule>) => onChange({ ...rule, ...part });
  const changeStep = (at: number, part: Partial<DoseChange>) =>
    change({ steps: rule.steps.map((step, i) => (i === at ? { ...step, ...part } : step)) });
  const first = (at: number) => {
    const step = rule.steps[at];
    if (step) change({ steps: [step, ...rule.steps.filter((_, i) => i !== at)] });
  };
  const threshold = (name: Threshold) => (
    <CountField
      words={plan.thresholds[name]}
      value={name === 'doneShare' ? Math.round(100 * rule.doneShare) : rule[name]}
      {...THRESHOLD_BOUNDS[name]}
      step={name === 'doneShare' ? 5 : 1}
      onChange={(value) => change({ [name]: name === 'doneShare' ? value / 100 : value })}
    />
  );
  return (
    <div className="line-editor-rule">
      <ul className="line-editor-says small">
        {[...new Set(ruleSays(rule, prescribe))].map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <details className="line-editor-fold">
        <summary>{plan.rule}</summary>
        <ul className="line-editor-sentences">
          {rule.steps.map((step, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: steps have no other name than their place.
            <Says key={at} text={stepSays(step, at, rule, prescribe)}>
              {at === 0 ? threshold('goodDays') : null}
              <CountField
                words={prescribe.rule.by[step.field]}
                value={step.by}
                least={1}
                most={LIMIT_BOUNDS[step.field].most}
                onChange={(by) => changeStep(at, { by })}
              />
              {at === 0 ? null : (
                <button type="button" className="button" onClick={() => first(at)}>
                  {prescribe.rule.first}
                </button>
              )}
            </Says>
          ))}
          {THRESHOLDS.map((name) => (
            <Says key={name} text={thresholdSays(name, rule, prescribe)}>
              {threshold(name)}
            </Says>
          ))}
        </ul>
        <LimitFields limits={rule.limits} onChange={(limits) => change({ limits })} />
      </details>
    </div>
  );
}
