// "Why?": a finding names its sum, its figures with their basis, and what would make it pass.
import { explainFinding, explainRule, rules, runChecks, type Finding } from '#checks/index.ts';
import { findSum } from '#physics/sums.ts';
import { buildStudy } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import { buildRadio } from '../demonstrations/radio.ts';
import { buildTelevision } from '../demonstrations/television.ts';
import { chassis } from '../helpers/chassis.ts';

const findingsOf = (build: () => Parameters<typeof buildStudy>[0]): Finding[] =>
  runChecks(buildStudy(build()));

describe('how a rule decides', () => {
  it.each(rules.map((rule) => [rule.id, rule] as const))(
    '%s says what it looks at, what makes it pass, and by which source',
    (id, { explain, title, source }) => {
      const text = explainRule(id)!;
      for (const part of [title, explain, source]) {
        expect(part).not.toBe('');
        expect(text).toContain(part);
      }
      expect(explain).toMatch(/\bpass(es)?\b/);
      expect(explain.length).toBeGreaterThan(120);
    }
  );
});

describe('why a finding is there', () => {
  it('goes from the figures by way of the sum to the limit', () => {
    const [finding] = findingsOf(() =>
      chassis()
        .strip('TS1', 2)
        .wire(1, 'TS1-1', 'TS1-2', { awg: 22, amps: 5, function: 'heaters', acV: 6.3, dcV: 0 })
        .build()
    ).filter(({ rule }) => rule === 'over-ampacity');
    const text = explainFinding(finding!);
    expect(text).toContain('Current: 5 A (declared on this wire)');
    expect(text).toContain('Insulation: 60 °C (insulation not known: taken as 60 °C)');
    expect(text).toContain('(ampacity)');
    expect(text).toContain('differ by four to one');
    expect(text).toContain('It passes with');
    expect(text).toContain('AC 43.13-1B');
  });

  it.each([
    ['television', buildTelevision],
    ['radio', buildRadio]
  ])('%s: names only sums that there are, and figures with their basis', (_name, build) => {
    const findings = findingsOf(build);
    const reasoned = findings.filter(({ why }) => why !== undefined);
    expect(reasoned.length).toBeGreaterThan(1);
    for (const { why } of reasoned) {
      if (why!.sum !== null) expect(findSum(why!.sum)).toBeDefined();
      expect(why!.inputs.length).toBeGreaterThan(0);
      for (const { name, value, basis } of why!.inputs) {
        expect(`${name}: ${value} (${basis})`).not.toMatch(/undefined|NaN|null|\(\)/);
      }
    }
    for (const finding of findings) {
      const text = explainFinding(finding);
      expect(text).toContain('Source: ');
      expect(text).toContain(finding.why ? finding.why.outcome : finding.message);
      if (finding.why) expect(text).toContain('It passes ');
      else if (finding.fix) expect(text).toContain(finding.fix.words);
    }
  });
});
