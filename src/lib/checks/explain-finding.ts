// Why a finding is there, in plain text: which sum, from which figures, and what would make it pass; then
// how its rule decides.
import { findSum } from '#physics/sums.ts';
import type { Finding, Reasoning } from './finding.ts';
import { explainRule } from './registry.ts';

/** How one finding was reckoned, a line each; an empty text where its message says it all. */
export function explainReasoning(why: Reasoning | undefined): string {
  if (!why) return '';
  const sum = why.sum === null ? undefined : findSum(why.sum);
  return [
    ...why.inputs.map(({ name, value, basis }) => `${name}: ${value} (${basis})`),
    ...(sum
      ? [`Sum: ${sum.title} (${sum.id}). ${sum.formula}`, `Source of the sum: ${sum.source}`]
      : []),
    why.outcome,
    `It passes ${why.passes}`
  ].join('\n');
}

/** The reasoning of a finding, and how its rule decides. */
export function explainFinding({ rule, why, source }: Finding): string {
  const general = explainRule(rule) ?? `Source: ${source}.`;
  const own = explainReasoning(why);
  return own === '' ? general : `${own}\n\n${general}`;
}
