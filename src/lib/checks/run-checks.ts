// Every rule over a study, worst findings first.
import type { Study } from '#study/index.ts';
import { severities, type Finding, type Rule, type Severity } from './finding.ts';
import { rules as allRules } from './registry.ts';

/** The findings of a study: by severity, then in the order of the registry, then of the document.
 *  Two runs over one study give the same list. */
export function runChecks(study: Study, rules: readonly Rule[] = allRules): Finding[] {
  return worstFirst(rules.flatMap((rule) => rule.check(study)));
}

/** Findings of one severity stay in their order. */
export function worstFirst(findings: readonly Finding[]): Finding[] {
  const bySeverity = new Map<Severity, Finding[]>(severities.map((severity) => [severity, []]));
  for (const finding of findings) bySeverity.get(finding.severity)?.push(finding);
  return severities.flatMap((severity) => bySeverity.get(severity) ?? []);
}

/** How many findings of each severity; every severity is there, with 0 where there is none. */
export function countFindings(findings: readonly Finding[]): Record<Severity, number> {
  const counts: Record<Severity, number> = { danger: 0, fault: 0, caution: 0, note: 0 };
  for (const { severity } of findings) counts[severity] += 1;
  return counts;
}
