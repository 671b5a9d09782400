// What must hold of the study of any document that the schema takes.
import { runChecks, rules, severities } from '#checks/index.ts';
import { applyEdit } from '#document/apply-edit.ts';
import { documentSchema, type ChassisDocument } from '#document/index.ts';
import { buildStudy, terminalKey, type Study } from '#study/index.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryDocument } from '../helpers/arbitrary-document.ts';
import { buildRadio } from '../demonstrations/radio.ts';
import { buildTelevision } from '../demonstrations/television.ts';
import { chassis } from '../helpers/chassis.ts';

const options = { seed: 20_231, numRuns: 60 };

const checkNets = (study: Study): void => {
  const seen = new Set<string>();
  for (const net of study.nets.values()) {
    expect(net.id).toBe(net.terminals[0]);
    expect([...net.terminals].sort()).toEqual(net.terminals);
    for (const key of net.terminals) {
      expect(seen.has(key)).toBe(false);
      seen.add(key);
      expect(study.netOf.get(key)).toBe(net.id);
    }
  }
  for (const part of Object.values(study.document.parts)) {
    for (const terminal of Object.values(part.terminals)) {
      expect(seen.has(terminalKey(part.id, terminal.id))).toBe(true);
    }
  }
};

const checkWires = (study: Study): void => {
  for (const wire of Object.values(study.document.wires)) {
    const about = study.wires.get(wire.id)!;
    const { stress, need, cut, length } = about;
    expect(stress === null).toBe(need === null);
    if (stress && need) {
      expect(Number.isFinite(stress.volts) && stress.volts >= 0).toBe(true);
      expect(stress.atLeast).toBe(stress.missing.length > 0);
      expect(need.preferredV).toBeGreaterThanOrEqual(need.requiredV);
      // The class covers what is asked, or says that no class does.
      if (!need.beyondLadder) expect(need.requiredV).toBeGreaterThanOrEqual(need.askedV);
      // No declared volts are lost: the largest of the net is at least the wire's own.
      const { dcV = 0, acV = 0, pulseV = 0 } = wire.carries;
      const own = Math.abs(dcV) + acV * Math.SQRT2 + pulseV;
      expect(stress.volts).toBeGreaterThanOrEqual(own * (1 - 1e-9));
    }
    if (cut && length) expect(cut.mm).toBeGreaterThanOrEqual(length.mm * (1 - 1e-9));
    // Not known never looks like a low class.
    if (need === null && about.recommended) {
      expect(about.recommended.atLeast).toBe(true);
      expect(about.recommended.classV).toBeGreaterThanOrEqual(study.policy.supplyFloorV);
    }
  }
};

describe('the study of any document', () => {
  it('never throws, and its parts agree', () => {
    fc.assert(
      fc.property(arbitraryDocument(), (document) => {
        const study = buildStudy(document);
        checkNets(study);
        checkWires(study);
        for (const finding of runChecks(study)) {
          expect(severities).toContain(finding.severity);
          expect(finding.at.length).toBeGreaterThan(0);
          expect(finding.message).not.toMatch(/\bNaN\b|\bInfinity\b|\[object/);
          expect(finding.caution !== undefined).toBe(finding.severity === 'danger');
        }
      }),
      options
    );
  });

  it('does not change the document, and does not depend on the order of its records', () => {
    fc.assert(
      fc.property(arbitraryDocument(4), (document) => {
        const before = structuredClone(document);
        const findings = runChecks(buildStudy(document));
        expect(document).toEqual(before);
        const turned: ChassisDocument = {
          ...document,
          wires: Object.fromEntries(Object.entries(document.wires).reverse())
        };
        expect(
          runChecks(buildStudy(turned)).filter(({ rule }) => rule !== 'reference-missing')
        ).toEqual(findings.filter(({ rule }) => rule !== 'reference-missing'));
      }),
      options
    );
  });

  it('takes extremes of the schema', () => {
    const set = chassis('Edge', {
      ladderV: [0],
      slackMm: 1_000_000,
      slackShare: 1,
      supplyFloorV: 0
    })
      .part('other', 'A', ['1'], { at: [-100_000, -100_000] })
      .part('other', 'B', ['1'], { at: [100_000, 100_000] })
      .wire(1, 'A', 'B', {
        dcV: -200_000,
        acV: 200_000,
        pulseV: 200_000,
        outsideMm: 1_000_000,
        fromEnd: { stripMm: 1_000_000 }
      })
      .wire(2, 'A', 'B', { tapedMm: 1_000_000, awg: 50, planned: { awg: -3 } })
      .wire(3, 'A', 'A');
    const study = buildStudy(set.build());
    expect(study.wires.get('w1')!.length).toBeNull();
    expect(study.wires.get('w2')!.cut!.mm).toBeGreaterThan(1_000_000);
    expect(study.wires.get('w1')!.need!.beyondLadder).toBe(true);
    expect(() => runChecks(study)).not.toThrow();
  });
});

describe('the demonstrations', () => {
  it.each([
    ['television', buildTelevision],
    ['radio', buildRadio]
  ])('%s: every finding reads as a sentence and every fix works', (_name, build) => {
    const document = documentSchema.parse(build());
    const study = buildStudy(document);
    const findings = runChecks(study);
    expect(findings.length).toBeGreaterThan(0);
    for (const finding of findings) {
      expect(rules.map(({ id }) => id)).toContain(finding.rule);
      expect(finding.message).toMatch(/^[A-Z0-9].*[.?]$/s);
      expect(finding.message.length).toBeLessThan(400);
      const edit = finding.fix?.edit;
      if (!edit) continue;
      const result = applyEdit(document, edit);
      expect(result).toMatchObject({ ok: true });
      if (result.ok) expect(runChecks(buildStudy(result.document))).not.toContainEqual(finding);
    }
  });
});
