// The registry as a whole: order, counts, explanations, and cautions.
import {
  cautions,
  cautionsFor,
  countFindings,
  explainRule,
  findRule,
  rules,
  runChecks,
  severities
} from '#checks/index.ts';
import { buildStudy } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import { chassis } from '../helpers/chassis.ts';

const mixed = () =>
  buildStudy(
    chassis()
      .strip('TS1', 6)
      .wire(1, 'TS1-1', null, { dcV: 100 })
      .wire(2, 'TS1-2', 'TS1-3', { dcV: 18_000, ratingV: 10_000 })
      .wire(2, 'TS1-4', 'TS1-5', { dcV: 5, tapedMm: 100 })
      .build()
  );

describe('the rules together', () => {
  it('gives the worst first, in a stable order', () => {
    const findings = runChecks(mixed());
    const ranks = findings.map(({ severity }) => severities.indexOf(severity));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
    expect(findings[0]).toMatchObject({ rule: 'class-found', severity: 'danger' });
    expect(runChecks(mixed())).toEqual(findings);
  });

  it('counts every severity', () => {
    const findings = runChecks(mixed());
    const counts = countFindings(findings);
    expect(counts).toMatchObject({ danger: 1, fault: 1 });
    expect(Object.values(counts).reduce((a, b) => a + b, 0)).toBe(findings.length);
    expect(countFindings([])).toEqual({ danger: 0, fault: 0, caution: 0, note: 0 });
  });

  it('has each rule once, with all that a person may ask of it', () => {
    expect(new Set(rules.map(({ id }) => id)).size).toBe(rules.length);
    for (const rule of rules) {
      expect(findRule(rule.id)).toBe(rule);
      expect(rule.id).toMatch(/^[a-z]+(-[a-z]+)*$/);
      expect(rule.title).toMatch(/^[A-Z]/);
      expect(rule.explain.length).toBeGreaterThan(100);
      expect(explainRule(rule.id)).toContain(rule.source);
    }
    expect(explainRule('no-such-rule')).toBeUndefined();
  });

  it('says nothing of an empty chassis', () => {
    expect(runChecks(buildStudy(chassis().build()))).toEqual([]);
  });
});

describe('the cautions', () => {
  const idsFor = (set: ReturnType<typeof chassis>) => cautionsFor(set.build()).map(({ id }) => id);

  it('speaks of picture tubes and X-rays only where there are any', () => {
    expect(idsFor(chassis().strip('TS1', 2))).toEqual([
      'competence',
      'stored-charge',
      'hot-chassis',
      'lead-and-insulation',
      'local-codes'
    ]);
    expect(idsFor(chassis().part('picture tube', 'V11', ['anode']))).toEqual(
      cautions.map(({ id }) => id)
    );
    const lead = chassis().strip('TS1', 2).wire(1, 'TS1-1', 'TS1-2', { dcV: 18_000 });
    expect(idsFor(lead)).toContain('x-radiation');
    expect(idsFor(lead)).not.toContain('implosion');
  });
});
