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

/** What is said of a finding that rests on no sum: what was compared, and the way out. */
const withoutSum = ({ message, at, fix }: Finding): string =>
  [
    `Read off the document, by no sum, at ${at.map(({ label }) => label).join(', ')}: ${message}`,
    ...(fix ? [`What would put it right: ${fix.words}`] : [])
  ].join('\n');

/** The reasoning of a finding, and how its rule decides. */
export function explainFinding(finding: Finding): string {
  const { rule, why, source } = finding;
  const general = explainRule(rule) ?? `Source: ${source}.`;
  return `${why ? explainReasoning(why) : withoutSum(finding)}\n\n${general}`;
}
