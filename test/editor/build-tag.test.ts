import { describe, expect, it } from 'vitest';
import { runChecks } from '#checks/index.ts';
import { litBy, pickOfPlaces, stillThere } from '#editor/core/pick.ts';
import { numberNotes } from '#editor/notes/number-notes.ts';
import { buildTag, findingsOf } from '#editor/tag/build-tag.ts';
import { buildStudy } from '#study/index.ts';
import { chassis } from '../helpers/chassis.ts';

const document = chassis('Bench set')
  .unit('Main chassis', { size: [430, 300] })
  .tube('V1', '6CG7', { at: [60, 60] })
  .strip('TS1', 5, { at: [120, 60], grounded: [3] })
  .strip('TS2', 5, { at: [180, 60] })
  .part('picture tube', 'V11', ['anode'])
  .wire(12, 'V1-1', 'TS1-2', { colour: 'red', dcV: 285, tapedMm: 100 })
  .wire(13, 'TS1-2', 'TS2-1', { colour: 'red' })
  .wire(14, 'V1-6', 'TS2-4', { colour: 'blue' })
  .wire(15, 'V1-3', 'TS1-3')
  .wire(16, 'V1-9', 'TS1-3')
  .wire(60, 'TS2-5', 'V11', { dcV: 18_000, ratingV: 10_000 })
  .build();
const study = buildStudy(document);
const findings = runChecks(study);
const idOf = (number: string): string =>
  study.index.wires.find((wire) => wire.number === number)!.id;
const tagOf = (number: string) => buildTag({ kind: 'wire', id: idOf(number) }, study, findings)!;
const fact = (number: string, label: string) =>
  tagOf(number).facts.find((candidate) => candidate.label === label);

describe('the paper tag', () => {
  it('says what a wire carries, what it needs, and why', () => {
    expect(tagOf('60').title).toBe('60');
    expect(tagOf('60').subtitle).toBe('TS2-5 to V11 anode');
    expect(fact('60', 'Carries')).toMatchObject({ value: '18 kV dc', aside: 'declared' });
    // 18 kV x 1.25 = 22.5 kV: the ladder's next step. Common practice, no source.
    expect(fact('60', 'Needs')!.value).toBe('25 kV class');
    expect(fact('60', 'Needs')!.why.join()).toContain('1.25');
  });

  it('says where a figure comes from when it was not declared on the wire', () => {
    expect(fact('13', 'Carries')).toMatchObject({ value: '285 V dc', aside: 'from what it joins' });
    expect(fact('13', 'Carries')!.why.join()).toContain('12');
  });

  it('says not known in words, and never a class, for a wire of which nothing is known', () => {
    for (const label of ['Carries', 'Stress', 'Needs']) {
      expect(fact('14', label)).toMatchObject({ value: 'not known', tone: 'unknown' });
    }
    expect(fact('14', 'Better')).toBeUndefined();
  });

  it('carries the danger of its wire with the caution in words', () => {
    const dangers = tagOf('60').findings.filter(({ severity }) => severity === 'danger');
    expect(dangers.map(({ rule }) => rule)).toContain('class-found');
    expect(dangers[0]!.caution).toMatch(/discharge/i);
  });

  it('lists the wires at a part and at a terminal', () => {
    const part = study.index.parts.find(({ reference }) => reference === 'TS1')!;
    const tag = buildTag({ kind: 'part', id: part.id }, study, findings)!;
    expect(tag.leads!.map(({ number, here, other }) => `${here}: ${number} to ${other}`)).toEqual([
      '2: 12 to V1-1',
      '2: 13 to TS2-1',
      '3: 15 to V1-3',
      '3: 16 to V1-9'
    ]);
    const terminal = study.index.terminals.find(
      (entry) => entry.part === part && entry.terminal.name === '2'
    )!;
    const pin = buildTag({ kind: 'terminal', id: terminal.key }, study, findings)!;
    expect(pin.terminalLabel).toBe('TS1-2');
    expect(pin.leads!.map(({ number }) => number)).toEqual(['12', '13']);
    expect(pin.facts.find(({ label }) => label === 'Volts')!.value).toBe('285 V dc');
  });

  it('is gone with what it was tied to', () => {
    expect(buildTag({ kind: 'wire', id: 'wgone' }, study, findings)).toBeNull();
    expect(stillThere({ kind: 'part', id: 'pgone' }, study)).toBeNull();
  });
});

describe('what lights up with a pick', () => {
  it('is the net of a wire', () => {
    const lit = litBy({ kind: 'wire', id: idOf('13') }, study);
    expect([...lit.wires].sort()).toEqual([idOf('12'), idOf('13')].sort());
    expect(lit.terminals.size).toBe(3);
    expect(lit.parts.size).toBe(3);
  });

  it('is the wire alone where it is joined to the chassis, which joins half the set', () => {
    expect([...litBy({ kind: 'wire', id: idOf('15') }, study).wires]).toEqual([idOf('15')]);
  });
});

describe('notes', () => {
  it('are numbered from one, the worst first, each with a place that can be picked', () => {
    const notes = numberNotes(findings);
    expect(notes[0]).toMatchObject({ number: 1, finding: { severity: 'danger' }, where: '60' });
    expect(notes.map(({ number }) => number)).toEqual(findings.map((_, index) => index + 1));
    const pick = pickOfPlaces(notes[0]!.finding.at, study)!;
    expect(pick).toEqual({ kind: 'wire', id: idOf('60') });
    expect(findingsOf(pick, study, findings)).toContain(findings[0]);
  });
});
