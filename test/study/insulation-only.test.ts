// Leads chosen for their insulation: no ampere figure of the program's own, whatever shows the wire.
import { runChecks } from '#checks/index.ts';
import { carriesText } from '#editor/core/words.ts';
import { columnOf } from '#editor/schedule/columns.ts';
import { buildSchedule, scheduleToCsv, scheduleToJson } from '#paperwork/index.ts';
import { buildStudy, type Study } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import { buildTelevision } from '../demonstrations/television.ts';
import { chassis } from '../helpers/chassis.ts';
import type { WireOptions } from '../helpers/chassis-options.ts';

/** 0.3 mA from a rectifier to the picture tube. */
const anodeLead = (volts: number, options: WireOptions = {}): Study =>
  buildStudy(
    chassis()
      .part('other', 'V16', ['7'], {
        elements: [{ kind: 'source', current: 'dc', volts, from: '7' }]
      })
      .part('picture tube', 'V18', ['anode'], {
        elements: [{ kind: 'load', from: 'anode', amps: 0.0003 }]
      })
      .wire(1, 'V16-7', 'V18 anode', { awg: 22, tapedMm: 500, ...options })
      .build()
  );

const amperes = /\d\s?[mµ]?A\b/;

describe('the current of a lead that is chosen for its insulation', () => {
  it('is reckoned, and not said', () => {
    const { wires } = anodeLead(18_000);
    expect(wires.get('w1')!.current!.amps).toBeCloseTo(0.0003, 9);
    expect(wires.get('w1')!.carries.amps).toBeNull();
    expect(anodeLead(400).wires.get('w1')!.carries.amps!.value).toBeCloseTo(0.0003, 9);
  });

  it('is not said by the function either, where the volts are not known', () => {
    const { wires } = anodeLead(4000, { function: 'second anode' });
    expect(wires.get('w1')!.carries.amps).toBeNull();
  });

  it('stays where somebody wrote it down', () => {
    const { wires } = anodeLead(18_000, { amps: 0.0005 });
    expect(wires.get('w1')!.carries.amps).toMatchObject({ value: 0.0005, how: 'declared' });
  });
});

describe('the second-anode lead of the television', () => {
  const study = buildStudy(buildTelevision());
  const about = study.wires.get('w128')!;
  const findings = runChecks(study).filter(({ at }) => at[0]?.id === 'w128');
  const rows = buildSchedule(study, findings);

  it('has findings, and none of them speaks of amperes', () => {
    expect(findings.length).toBeGreaterThan(0);
    for (const { message, fix, why } of findings) {
      expect([message, fix?.words, why?.outcome, why?.passes].join(' ')).not.toMatch(amperes);
    }
  });

  it('has an empty cell in the schedule, on paper and on screen', () => {
    const row = rows.find(({ number }) => number === '128')!;
    expect(row.amps).toBeNull();
    const line = scheduleToCsv(rows)
      .split('\r\n')
      .find((text) => text.startsWith('128,'))!;
    expect(line).toContain(',18000,,,,18000,');
    expect(scheduleToJson([row])).toMatch(/"amps": ?null/i);
    const wire = study.document.wires['w128']!;
    const { show } = columnOf('amps');
    expect(show({ wire, about } as Parameters<typeof show>[0])).toBe('');
  });

  it('carries kilovolts and nothing else in words', () => {
    expect(carriesText(about.carries)).toBe('18 kV dc');
  });
});
