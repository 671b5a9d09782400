// One table a rule: chassis on which it must be silent, and chassis on which it must speak. What
// must hold of every finding is checked for all of them here.
import { applyEdit } from '#document/apply-edit.ts';
import type { ChassisDocument } from '#document/index.ts';
import { explainRule, severities, type Finding, type Rule, type Severity } from '#checks/index.ts';
import { buildStudy } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import { ChassisBuilder } from './chassis.ts';

type Given = ChassisBuilder | ChassisDocument;

export interface ExpectedFinding {
  readonly severity: Severity;
  /** A part of the message, or a pattern that it matches. */
  readonly says: string | RegExp;
  /** Labels of the places, in order. */
  readonly at?: readonly string[];
  /** The way out, in words. */
  readonly fix?: string;
  /** Whether one click can put it right. */
  readonly hasEdit?: boolean;
}

export interface RuleCases {
  readonly valid: Readonly<Record<string, () => Given>>;
  readonly invalid: Readonly<Record<string, readonly [() => Given, ...ExpectedFinding[]]>>;
}

const documentOf = (given: Given): ChassisDocument =>
  given instanceof ChassisBuilder ? given.build() : given;

/** What a rule says of a chassis. */
export const findingsOf = (rule: Rule, given: Given): Finding[] =>
  rule.check(buildStudy(documentOf(given)));

export function ruleTester(rule: Rule, { valid, invalid }: RuleCases): void {
  describe(rule.id, () => {
    for (const [name, given] of Object.entries(valid)) {
      it(`is silent: ${name}`, () => {
        expect(findingsOf(rule, given()).map(({ message }) => message)).toEqual([]);
      });
    }
    for (const [name, [given, ...expected]] of Object.entries(invalid)) {
      it(`speaks: ${name}`, () => {
        const document = documentOf(given());
        const findings = findingsOf(rule, document);
        expect(findings.map(({ message }) => message)).toHaveLength(expected.length);
        findings.forEach((finding, n) => {
          const wanted = expected[n]!;
          expect(finding).toMatchObject({ rule: rule.id, severity: wanted.severity });
          if (typeof wanted.says === 'string') expect(finding.message).toContain(wanted.says);
          else expect(finding.message).toMatch(wanted.says);
          if (wanted.at) expect(finding.at.map(({ label }) => label)).toEqual(wanted.at);
          if (wanted.fix !== undefined) expect(finding.fix?.words).toBe(wanted.fix);
          if (wanted.hasEdit !== undefined) {
            expect(finding.fix?.edit !== undefined).toBe(wanted.hasEdit);
          }
          checkFinding(rule, finding, document);
        });
      });
    }
    it('explains itself', () => {
      expect(explainRule(rule.id)).toContain(rule.explain);
    });
  });
}

/** What must hold of any finding. */
export function checkFinding(rule: Rule, finding: Finding, document: ChassisDocument): void {
  expect(finding.at.length).toBeGreaterThan(0);
  expect(finding.source).not.toBe('');
  expect(finding.message).toMatch(/^[A-Z0-9].*[.?]$/s);
  expect(finding.message).not.toMatch(/undefined|NaN|null|Infinity|\[object/);
  expect(severities.indexOf(finding.severity)).toBeGreaterThanOrEqual(
    severities.indexOf(rule.severity)
  );
  expect(finding.caution !== undefined).toBe(finding.severity === 'danger');
  expect(JSON.parse(JSON.stringify(finding))).toEqual(finding);
  const edit = finding.fix?.edit;
  if (!edit) return;
  const result = applyEdit(document, edit);
  expect(result).toMatchObject({ ok: true });
  if (!result.ok) return;
  const after = rule.check(buildStudy(result.document));
  expect(after).not.toContainEqual(finding);
}
