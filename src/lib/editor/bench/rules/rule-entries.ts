// The rules as a handbook lists them: by severity, each with how it decides and what makes it pass
// told apart.
import { rules, severities, type Rule, type Severity } from '#checks/index.ts';

export interface RuleEntry {
  readonly rule: Rule;
  readonly decides: string;
  /** Empty where the rule does not say. */
  readonly passes: string;
}

export interface RuleGroup {
  readonly severity: Severity;
  /** "Danger". */
  readonly title: string;
  /** What the severity means. */
  readonly text: string;
  readonly entries: readonly RuleEntry[];
}

const meanings: Readonly<Record<Severity, string>> = {
  danger: 'Can kill or burn. Its caution stands beside it in words, on screen and on every export.',
  fault: 'Wrong, and has to be put right.',
  caution: 'May be wrong, or has to be known before work goes on.',
  note: 'Worth knowing. Nothing has to be done.'
};

/** Worst first; within a severity in the order in which findings are listed. */
export function buildRuleGroups(registered: readonly Rule[] = rules): readonly RuleGroup[] {
  return severities
    .map((severity) => ({
      severity,
      title: severity.charAt(0).toUpperCase() + severity.slice(1),
      text: meanings[severity],
      entries: registered
        .filter((rule) => rule.severity === severity)
        .map((rule) => ({ rule, ...splitExplanation(rule.explain) }))
    }))
    .filter(({ entries }) => entries.length > 0);
}

/** The sentences on how a rule decides, and those on what makes it pass.
 *  Example:  splitExplanation("Looks at a. It passes with b.").passes // "It passes with b."
 */
export function splitExplanation(explain: string): Pick<RuleEntry, 'decides' | 'passes'> {
  const sentences = explain.split(/(?<=[a-z0-9)"']\.)\s+(?=[A-Z])/);
  const isOfPassing = (sentence: string): boolean => /\b(?:pass|passes)\b/.test(sentence);
  return {
    decides: sentences.filter((sentence) => !isOfPassing(sentence)).join(' '),
    passes: sentences.filter(isOfPassing).join(' ')
  };
}
