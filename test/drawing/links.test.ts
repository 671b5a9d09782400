// What is drawn as a line and what as a mark.
import { describe, expect, it } from 'vitest';
import { buildLinks } from '#drawing/presentation/links.ts';
import { buildStudy } from '#study/build-study.ts';
import { chassis, type ChassisBuilder } from '../helpers/chassis.ts';

const linksOf = (set: ChassisBuilder) => {
  const study = buildStudy(set.build());
  return buildLinks(study, study.index.partById);
};

const small = () =>
  chassis()
    .tube('V1', '6CG7')
    .strip('TS1', 5, { grounded: [3] })
    .ground('GL1');

describe('chassis ground', () => {
  it('is a mark at each end of the wire, never a line', () => {
    const { lines, marks } = linksOf(small().wire(1, 'V1-4', 'GL1').wire(2, 'TS1-1', 'TS1-3'));
    expect(lines).toEqual([]);
    const found = marks.map(({ kind, part, wires, words }) => [kind, part, wires, words]);
    expect(found).toEqual([
      ['ground', 'pv1', ['w1'], expect.stringContaining('GL1')],
      ['ground', 'pts1', ['w2'], 'TS1-3'],
      ['metal', 'pts1', ['w2'], ''],
      ['metal', 'pgl1', ['w1'], '']
    ]);
  });
});

describe('ends that nobody found', () => {
  it('are stubs with what was written down', () => {
    const { marks, loose } = linksOf(
      small()
        .wire(1, 'V1-1', null, { toEnd: { as: 'into the loom' } })
        .wire(2, null, null)
    );
    expect(marks.filter(({ kind }) => kind === 'free')).toMatchObject([
      { part: 'pv1', terminal: 't1', wires: ['w1'], words: 'into the loom' }
    ]);
    expect(loose).toEqual(['w2']);
  });

  it('count as not found where their terminal is missing from the document', () => {
    const set = small().wire(1, 'V1-1', 'TS1-1').build();
    delete set.parts['pts1'];
    const study = buildStudy(set);
    const { lines, marks } = buildLinks(study, study.index.partById);
    expect(lines).toEqual([]);
    expect(marks.filter(({ kind }) => kind === 'free')).toHaveLength(1);
  });
});

describe('components on terminals', () => {
  it('are marks at both of their terminals, and need no place', () => {
    const { marks, absorbed, lines } = linksOf(small().resistor('R1', '47k', 'V1-1', 'TS1-2'));
    expect(absorbed).toEqual(new Set(['pr1']));
    expect(lines).toEqual([]);
    expect(marks.filter(({ kind }) => kind === 'component')).toMatchObject([
      { part: 'pv1', terminal: 't1', words: 'TS1-2', toMetal: false },
      { part: 'pts1', terminal: 't2', words: 'V1-1', toMetal: false }
    ]);
  });

  it('to the metal are drawn once, at the live end', () => {
    const { marks } = linksOf(small().capacitor('C1', '0.01 uF', 'V1-3', 'TS1-3'));
    expect(marks.filter(({ kind }) => kind === 'component')).toMatchObject([
      { part: 'pv1', terminal: 't3', words: 'TS1-3', toMetal: true }
    ]);
  });

  it('that carry a wire, or hang by one lead, stand by themselves with their lead as a line', () => {
    const { lines, absorbed } = linksOf(
      small().resistor('R1', '47k', 'V1-1', null).wire(1, 'R1 B', 'TS1-1')
    );
    expect(absorbed.size).toBe(0);
    expect(lines.map(({ kind }) => kind).sort()).toEqual(['lead', 'wire']);
  });
});

describe('plugs', () => {
  const pins = ['1', '2', '3', '4'];
  const plugs = () => chassis().part('jack', 'J1', pins).part('plug', 'P1', pins);

  it('that mate are joined by one line', () => {
    const { lines } = linksOf(
      chassis().part('jack', 'J1', pins).part('plug', 'P1', pins, { mates: 'J1' })
    );
    expect(lines.map(({ kind, wires }) => [kind, wires])).toEqual([['mates', []]]);
  });

  it('with three wires or more between them are joined by one cable that names its wires', () => {
    const { lines, marks } = linksOf(
      plugs().wire(1, 'J1-1', 'P1-1').wire(2, 'J1-2', 'P1-2').wire(3, 'J1-3', 'P1-3')
    );
    expect(lines.map(({ kind, wires }) => [kind, wires])).toEqual([['trunk', ['w1', 'w2', 'w3']]]);
    expect(marks.filter(({ kind }) => kind === 'gather')).toHaveLength(6);
  });

  it('with two wires keep them as wires', () => {
    const { lines } = linksOf(plugs().wire(1, 'J1-1', 'P1-1').wire(2, 'J1-2', 'P1-2'));
    expect(lines.map(({ kind }) => kind)).toEqual(['wire', 'wire']);
  });
});
