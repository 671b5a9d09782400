// Findings as people read them on a terminal and on paper, and as other programs read them.
import { severities, type Finding, type Severity } from '#checks/index.ts';

/** How many findings of each severity, all severities named. */
export const countBySeverity = (findings: readonly Finding[]): Record<Severity, number> => {
  const counts = { danger: 0, fault: 0, caution: 0, note: 0 };
  for (const finding of findings) counts[finding.severity] += 1;
  return counts;
};

/** `{ "findings": [ … ], "counts": { … } }`; a fix that a machine can make is given as its edit. */
export const findingsToJson = (findings: readonly Finding[]): string =>
  JSON.stringify(
    {
      findings: findings.map(({ rule, severity, at, message, source, fix, caution }) => ({
        rule,
        severity,
        at: at.map(({ kind, id, label }) => ({ kind, id, label })),
        message,
        source,
        fix: fix ?? null,
        ...(caution === undefined ? {} : { caution })
      })),
      counts: countBySeverity(findings)
    },
    null,
    1
  ) + '\n';

/** Worst first, one paragraph a finding, the caution of a danger beside it. */
export const findingsToText = (findings: readonly Finding[]): string => {
  const counts = countBySeverity(findings);
  const head = severities.map((severity) => `${counts[severity]} ${severity}`).join(', ');
  const paragraphs = findings.map((finding) =>
    [
      `${finding.severity.toUpperCase()}  ${finding.rule}  ${finding.at.map((place) => place.label).join(', ')}`,
      `  ${finding.message}`,
      ...(finding.caution ? [`  ${finding.caution}`] : []),
      ...(finding.fix ? [`  Way out: ${finding.fix.words}`] : []),
      `  Source: ${finding.source}`
    ].join('\n')
  );
  return [`Findings: ${head}`, ...paragraphs].join('\n\n') + '\n';
};
