// Why a finding is there, in plain text: which rule, which sum, from which figures, and what would make
// it pass.
import { findSum } from '#physics/sums.ts';
import type { Finding } from './finding.ts';
import { explainRule } from './registry.ts';

/** The reasoning of a finding, a paragraph each: what was reckoned from what, then how its rule decides. */
export function explainFinding({ rule, why, source }: Finding): string {
  const general = explainRule(rule) ?? `Source: ${source}.`;
  if (!why) return general;
  const sum = why.sum === null ? undefined : findSum(why.sum);
  const lines = [
    ...why.inputs.map(({ name, value, basis }) => `${name}: ${value} (${basis})`),
    ...(sum
      ? [`Sum: ${sum.title} (${sum.id}). ${sum.formula}`, `Source of the sum: ${sum.source}`]
      : []),
    why.outcome,
    `It passes ${why.passes}`
  ];
  return `${lines.join('\n')}\n\n${general}`;
}
