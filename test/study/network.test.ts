// The whole chassis as a network, held against a general circuit simulator, hand sums and the trade.
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { classFound } from '#checks/rules/class-found.ts';
import { buildStudy, terminalKey, type Study, type TerminalVolts } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import type { ElementSpec } from '../helpers/chassis-options.ts';
import { chassis, type ChassisBuilder } from '../helpers/chassis.ts';

const folder = new URL('./ngspice/', import.meta.url);
const hasNgspice = spawnSync('ngspice', ['--version']).status === 0;

const readAnswers = (text: string): Map<string, number> =>
  new Map(
    [...text.matchAll(/^v\((\w+)\) = (\S+)$/gm)].map((match) => [match[1]!, Number(match[2])])
  );

/** What was kept; where ngspice is installed, what it says now has to be the same. */
const answersOf = (name: string): Map<string, number> => {
  const kept = readAnswers(readFileSync(new URL(`${name}.out`, folder), 'utf8'));
  if (hasNgspice) {
    const netlist = fileURLToPath(new URL(`${name}.cir`, folder));
    const { stdout } = spawnSync('ngspice', ['-b', netlist], { encoding: 'utf8' });
    expect(readAnswers(stdout)).toEqual(kept);
  }
  return kept;
};

const keyOf = ({ document }: Study, reference: string, name: string): string => {
  const part = Object.values(document.parts).find((each) => each.reference === reference)!;
  const terminal = Object.values(part.terminals).find((each) => each.name === name)!;
  return terminalKey(part.id, terminal.id);
};
const voltsAt = (study: Study, reference: string, name: string): TerminalVolts =>
  study.network.voltsAt(keyOf(study, reference, name));
const netAt = (study: Study, reference: string, name: string) =>
  study.nets.get(study.netOf.get(keyOf(study, reference, name))!)!;
const studyOf = (set: ChassisBuilder): Study => buildStudy(set.build());

const heater = (volts: number, amps: number): ElementSpec[] => [
  { kind: 'heater', from: '3', to: '4', volts, amps }
];
const source = (volts: number, more: object = {}): ElementSpec[] => [
  { kind: 'source', current: 'dc', from: '+', volts, ...more }
];

describe('against ngspice', () => {
  it('the drop along a heater trunk, there and back, at each heater', () => {
    const answers = answersOf('heater-trunk');
    const run = (tapedMm: number) => ({ awg: 20, tapedMm, function: 'heaters' });
    const study = studyOf(
      chassis('Trunk', { ambientC: 20 })
        .part('transformer', 'T1', ['g1', 'g2'], {
          elements: [{ kind: 'source', current: 'ac', from: 'g1', to: 'g2', volts: 6.3 }]
        })
        .ground('GL1')
        .ground('GL2')
        .part('other', 'A', ['3', '4'], { elements: heater(6.3, 0.45) })
        .part('other', 'B', ['3', '4'], { elements: heater(6.3, 0.3) })
        .part('other', 'C', ['3', '4'], { elements: heater(6.3, 0.6) })
        .wire(1, 'T1 g2', 'GL1')
        .wire(2, 'T1 g1', 'A-3', run(1000))
        .wire(3, 'A-3', 'B-3', run(500))
        .wire(4, 'B-3', 'C-3', run(500))
        .wire(5, 'A-4', 'GL2', run(250))
        .wire(6, 'B-4', 'GL2', run(250))
        .wire(7, 'GL2', 'C-4', run(250))
    );
    for (const [node, reference, name] of [
      ['a', 'A', '3'],
      ['ar', 'A', '4'],
      ['b', 'B', '3'],
      ['br', 'B', '4'],
      ['c', 'C', '3'],
      ['cr', 'C', '4']
    ] as const) {
      // The published resistance is rounded to five digits.
      expect(Math.abs(voltsAt(study, reference, name).acV! / answers.get(node)! - 1)).toBeLessThan(
        3e-5
      );
    }
    const [wire] = [study.wires.get('w2')!];
    const amps = answers.get('a')! / 14 - answers.get('ar')! / 14;
    expect(wire.current!.flows).toBe('from to to');
    expect(wire.current!.amps).toBeGreaterThan(amps);
    expect(study.wires.get('w5')!.current).toMatchObject({ flows: 'from to to' });
    expect(study.wires.get('w7')!.current).toMatchObject({ flows: 'to to from' });
    expect(study.wires.get('w5')!.current!.amps).toBeCloseTo(amps, 6);
    // With every element described nothing is left open.
    expect(wire.carries.amps).toMatchObject({ how: 'solved' });
    expect(wire.carries.amps!.doubt).toBeUndefined();
  });

  const rails = () =>
    chassis()
      .ground('GL1')
      .strip('TS1', 6)
      .part('other', 'B1', ['+'], { elements: source(300, { seriesOhms: 20, noLoadVolts: 380 }) })
      .part('coil', 'L1', ['1', '2'], {
        elements: [{ kind: 'resistor', from: '1', to: '2', ohms: 45 }]
      })
      .part('other', 'V1', ['p', 'k'], {
        elements: [
          { kind: 'load', from: 'p', amps: 0.12 },
          { kind: 'load', from: 'k', amps: 0.06 }
        ]
      })
      .part('other', 'V2', ['p', 'k'], {
        elements: [{ kind: 'load', from: 'p', to: 'k', amps: 0.0012 }]
      })
      .resistor('R1', '500', 'TS1-2', 'TS1-3')
      .resistor('R2', '22k', 'TS1-3', 'GL1')
      .resistor('R3', '47k', 'TS1-3', 'TS1-4')
      .resistor('R4', '1.5k', 'TS1-5', 'GL1')
      .wire(1, 'B1 +', 'L1-1', { function: 'B+' })
      .wire(2, 'L1-2', 'TS1-2')
      .wire(3, 'TS1-2', 'V1 p')
      .wire(4, 'TS1-3', 'V1 k')
      .wire(5, 'TS1-4', 'V2 p', { ratingV: 300 })
      .wire(6, 'TS1-5', 'V2 k');

  it('rails with the tubes drawing, and what they rise to before that', () => {
    const study = studyOf(rails());
    const loaded = answersOf('rails-loaded');
    const cold = answersOf('rails-cold');
    for (const [node, reference, name] of [
      ['raw', 'L1', '1'],
      ['main', 'TS1', '2'],
      ['second', 'TS1', '3'],
      ['plate', 'TS1', '4'],
      ['cath', 'TS1', '5']
    ] as const) {
      const { dcV, coldDcV } = voltsAt(study, reference, name);
      expect(dcV, node).toBeCloseTo(loaded.get(node)!, 6);
      expect(coldDcV, node).toBeCloseTo(cold.get(node) ?? 0, 6);
    }
    expect(netAt(study, 'TS1', '3').dcV).toMatchObject({ how: 'solved' });
    expect(study.wires.get('w5')!.current).toMatchObject({ amps: 0.0012, flows: 'from to to' });
    expect(study.wires.get('w6')!.current).toMatchObject({ amps: 0.0012, flows: 'to to from' });
  });

  it('a series string behind a dropper', () => {
    const answers = answersOf('series-string');
    const study = studyOf(
      chassis()
        .ground('GL1')
        .strip('TS1', 2)
        .part('plug', 'P1', ['1', '2'], {
          elements: [{ kind: 'source', current: 'ac', from: '1', to: '2', volts: 117 }]
        })
        .resistor('R1', '125', 'P1-1', 'TS1-1')
        .part('other', 'A', ['3', '4'], { elements: heater(50, 0.15) })
        .part('other', 'B', ['3', '4'], { elements: heater(35, 0.15) })
        .part('other', 'C', ['3', '4'], { elements: heater(12.6, 0.15) })
        .wire(1, 'TS1-1', 'A-3')
        .wire(2, 'A-4', 'B-3')
        .wire(3, 'B-4', 'C-3')
        .wire(4, 'C-4', 'GL1')
        .wire(5, 'P1-2', 'GL1')
    );
    expect(voltsAt(study, 'A', '3').acV).toBeCloseTo(answers.get('n0')!, 6);
    expect(voltsAt(study, 'B', '3').acV).toBeCloseTo(answers.get('n1')!, 6);
    expect(voltsAt(study, 'C', '3').acV).toBeCloseTo(answers.get('n2')!, 6);
    for (const id of ['w1', 'w2', 'w3', 'w4']) {
      expect(study.wires.get(id)!.current!.amps).toBeCloseTo((117 - answers.get('n0')!) / 125, 6);
    }
  });

  it('a rail of 235 V that rises to 330 V before the tubes draw is too much for 300 V wire', () => {
    // 330 V x 1.25 = 412.5 V; by its 235 V alone 293.8 V would have done.
    const set = chassis()
      .strip('TS1', 3)
      .part('other', 'B1', ['+'], { elements: source(240, { noLoadVolts: 300 }) })
      .part('other', 'V1', ['p'], { elements: [{ kind: 'load', from: 'p', amps: 0.05 }] })
      .resistor('R1', '100', 'B1 +', 'TS1-1')
      .wire(1, 'TS1-1', 'V1 p', { function: 'audio plate', ratingV: 300, acV: 0 });
    const study = studyOf(set);
    expect(voltsAt(study, 'V1', 'p')).toMatchObject({ dcV: 235, coldDcV: 330 });
    const [finding] = classFound.check(study);
    expect(finding!.message).toContain('carries 330 V dc cold');
    expect(finding!.message).toContain('330 V x 1.25 = 412.5 V');
  });
});

describe('what is declared', () => {
  const bench = (declared: number | undefined) =>
    chassis()
      .strip('TS1', 4)
      .part('other', 'B1', ['+'], { elements: source(250) })
      .part('other', 'V1', ['p'], { elements: [{ kind: 'load', from: 'p', amps: 0.005 }] })
      .resistor('R1', '10k', 'B1 +', 'TS1-1')
      .resistor('R2', '1M', 'TS1-1', 'TS1-2')
      .wire(1, 'TS1-1', 'V1 p', declared === undefined ? {} : { dcV: declared })
      .wire(2, 'TS1-2', 'TS1-3');

  it('stands where the circuit comes within a tenth of it, and nobody is told', () => {
    const study = studyOf(bench(205));
    expect(study.wires.get('w1')!.carries.dcV!.value).toBe(205);
    expect(netAt(study, 'TS1', '1').solvedDcV!.value).toBe(200);
    expect(study.network.disagreements).toEqual([]);
    expect(study.wires.get('w1')!.stress!.volts).toBe(250);
  });

  it('wins where the circuit comes to something else, and what hangs on it follows', () => {
    const study = studyOf(bench(150));
    expect(study.network.disagreements).toMatchObject([
      { declared: { value: 150 }, solvedV: 200, fedBy: 'B1', open: '' }
    ]);
    expect(netAt(study, 'TS1', '2').dcV).toMatchObject({ value: 150, how: 'solved' });
    expect(netAt(study, 'TS1', '2').dcV!.basis).toContain('150 V declared on wire 1');
  });

  it('feeds a circuit that has no source of its own', () => {
    const study = studyOf(
      chassis()
        .ground('GL1')
        .strip('TS1', 4)
        .resistor('R1', '30k', 'TS1-1', 'TS1-2')
        .resistor('R2', '10k', 'TS1-2', 'GL1')
        .wire(1, 'TS1-1', 'TS1-3', { function: 'B+', dcV: 280 })
        .wire(2, 'TS1-2', 'TS1-4')
    );
    expect(netAt(study, 'TS1', '2').dcV).toMatchObject({ value: 70, how: 'solved' });
    // Where in the net the rail is fed nobody knows: no current is told for its own wires.
    expect(study.wires.get('w1')!.current).toBeNull();
  });

  it('is no alternating voltage of the line where it is a signal', () => {
    const study = studyOf(
      chassis()
        .ground('GL1')
        .strip('TS1', 4)
        .resistor('R1', '30k', 'TS1-1', 'TS1-2')
        .resistor('R2', '10k', 'TS1-2', 'GL1')
        .wire(1, 'TS1-1', 'TS1-3', { function: 'audio', dcV: 0, acV: 4 })
        .wire(2, 'TS1-2', 'TS1-4')
    );
    expect(netAt(study, 'TS1', '2').acV).toBeNull();
  });
});

describe('what nobody described', () => {
  it('leaves a figure a lower bound, and nought not known', () => {
    const study = studyOf(
      chassis()
        .ground('GL1')
        .strip('TS1', 6)
        .tube('V1', '6CG7')
        .part('other', 'B1', ['+'], { elements: source(250) })
        .resistor('R1', '47k', 'B1 +', 'TS1-1')
        .resistor('R2', '1k', 'TS1-2', 'GL1')
        .resistor('R3', '100k', 'B1 +', 'TS1-3')
        .resistor('R4', '100k', 'TS1-3', 'GL1')
        .wire(1, 'V1-1', 'TS1-1')
        .wire(2, 'V1-3', 'TS1-2')
        .wire(3, 'TS1-3', null)
    );
    // 6CG7, its data sheet: 1 is a plate, 3 a cathode.
    const plate = study.wires.get('w1')!;
    expect(plate.carries.dcV!.value).toBe(250);
    expect(plate.carries.dcV!.basis).toContain('at most: V1-1 counted as drawing nothing');
    expect(plate.stress!.atLeast).toBe(false);
    const cathode = study.wires.get('w2')!;
    expect(cathode.carries.dcV).toBeNull();
    expect(cathode.need).toBeNull();
    const lost = study.wires.get('w3')!;
    expect(lost.carries.dcV).toMatchObject({
      value: 125,
      doubt: 'what the far end of wire 3 does there'
    });
    expect(lost.stress).toMatchObject({ volts: 125, atLeast: true });
  });

  it('does not reach past the chassis', () => {
    const study = studyOf(
      chassis()
        .unit('Main chassis')
        .strip('TS1', 6)
        .ground('GL1')
        .unit('Power unit', { metal: 'apart' })
        .ground('GL2')
        .part('other', 'B1', ['+'], { elements: source(250) })
        .in('Main chassis')
        .tube('V1', '6CG7')
        .resistor('R1', '47k', 'B1 +', 'TS1-1')
        .resistor('R2', '47k', 'TS1-1', 'GL1')
        .resistor('R3', '1k', 'V1-3', 'GL2')
        .wire(1, 'TS1-1', 'TS1-2')
        .wire(2, 'GL1', 'GL2', { awg: 18, tapedMm: 500 })
    );
    expect(study.wires.get('w1')!.carries.dcV!.doubt).toBeUndefined();
    expect(study.wires.get('w1')!.carries.dcV!.value).toBeCloseTo(125, 4);
  });
});

describe('trouble', () => {
  const radio = (extra: (set: ChassisBuilder) => ChassisBuilder) =>
    studyOf(
      extra(
        chassis()
          .ground('GL1')
          .strip('TS1', 6)
          .part('other', 'B1', ['+', '-'], {
            elements: [{ kind: 'source', current: 'dc', from: '+', to: '-', volts: 120 }]
          })
          .part('other', 'V1', ['p', 'k'], {
            elements: [{ kind: 'load', from: 'p', to: 'k', amps: 0.04 }]
          })
          .resistor('R1', '500', 'TS1-1', 'TS1-2')
          .wire(1, 'B1 +', 'TS1-1', { function: 'B+' })
          .wire(2, 'TS1-2', 'V1 p')
          .wire(3, 'V1 k', 'TS1-3', { function: 'B-' })
          .wire(4, 'TS1-3', 'B1 -')
      )
    );

  it('a B- that floats: volts are counted from it, and none of them from the chassis', () => {
    const study = radio((set) => set);
    expect(voltsAt(study, 'V1', 'p')).toMatchObject({ dcV: 100, countedFrom: 'B-' });
    expect(netAt(study, 'V1', 'p').dcV).toBeNull();
    expect(study.wires.get('w2')!.need).toBeNull();
    expect(study.wires.get('w2')!.current).toMatchObject({ amps: 0.04, flows: 'from to to' });
    expect(study.network.floating).toMatchObject([{ kind: 'dc' }]);
  });

  it('the same on the chassis by a resistor: volts count from the chassis', () => {
    const study = radio((set) => set.resistor('R2', '220k', 'TS1-3', 'GL1'));
    expect(voltsAt(study, 'V1', 'p')).toMatchObject({ dcV: 100, countedFrom: null });
    expect(netAt(study, 'V1', 'p').dcV).toMatchObject({ value: 100, how: 'solved' });
    expect(study.network.floating).toEqual([]);
  });

  it('a source whose two sides are connected gives no volts, and is named', () => {
    const study = radio((set) => set.wire(5, 'TS1-1', 'TS1-3', { awg: 22, tapedMm: 50 }));
    expect(study.network.shorted).toMatchObject([{ against: null }]);
    expect(study.network.shorted[0]!.element.part.reference).toBe('B1');
    expect(netAt(study, 'V1', 'p').dcV).toBeNull();
  });

  it('two sources that contradict each other are named', () => {
    const study = studyOf(
      chassis()
        .strip('TS1', 2)
        .part('other', 'B1', ['+'], { elements: source(250) })
        .part('other', 'B2', ['+'], { elements: source(180) })
        .wire(1, 'B1 +', 'TS1-1')
        .wire(2, 'B2 +', 'TS1-1')
    );
    expect(study.network.shorted).toHaveLength(1);
    expect(study.network.shorted[0]!.against!.part.reference).toBe('B1');
  });

  it('what flows between such two is not reckoned, though the wire has a resistance', () => {
    const between = (volts: number) =>
      studyOf(
        chassis()
          .part('other', 'B1', ['+'], { elements: source(250) })
          .part('other', 'B2', ['+'], { elements: source(volts) })
          .wire(1, 'B1 +', 'B2 +', { awg: 22, tapedMm: 100 })
      ).wires.get('w1')!.current;
    expect(between(400)).toBeNull();
    // Within a tenth they count as alike, and the difference flows.
    expect(between(249.99)!.amps).toBeGreaterThan(0.1);
  });

  it('a load that nothing feeds, and one that is fed too little', () => {
    const unfed = studyOf(
      chassis()
        .ground('GL1')
        .part('other', 'V1', ['p'], { elements: [{ kind: 'load', from: 'p', amps: 0.01 }] })
        .resistor('R1', '47k', 'V1 p', 'GL1')
    );
    expect(unfed.network.starved).toMatchObject([{ isFed: false }]);
    expect(netAt(unfed, 'V1', 'p').dcV).toBeNull();
    const choked = studyOf(
      chassis()
        .part('other', 'B1', ['+'], { elements: source(250) })
        .part('other', 'V1', ['p'], { elements: [{ kind: 'load', from: 'p', amps: 0.01 }] })
        .resistor('R1', '47k', 'B1 +', 'V1 p')
    );
    // 10 mA through 47 k would be 470 V of 250 V.
    expect(choked.network.starved).toMatchObject([{ isFed: true, fedBy: 'B1' }]);
    expect(netAt(choked, 'V1', 'p').dcV).toBeNull();
  });
});

describe('elements', () => {
  it('a switch is closed or open as the document says', () => {
    const set = (closed: boolean) =>
      studyOf(
        chassis()
          .strip('TS1', 2)
          .part('other', 'B1', ['+'], { elements: source(45) })
          .part('switch', 'S1', ['1', '2'], {
            elements: [{ kind: 'link', what: 'switch', from: '1', to: '2', closed }]
          })
          .wire(1, 'B1 +', 'S1-1')
          .wire(2, 'S1-2', 'TS1-1')
      );
    expect(netAt(set(true), 'TS1', '1').dcV!.value).toBe(45);
    expect(netAt(set(false), 'TS1', '1').dcV).toBeNull();
  });

  it('a resistor is one by its written value alone', () => {
    const study = studyOf(
      chassis()
        .ground('GL1')
        .strip('TS1', 2)
        .part('other', 'B1', ['+'], { elements: source(100) })
        .part(
          'resistor',
          'R1',
          [
            { name: 'A', on: 'TS1-1' },
            { name: 'B', on: 'TS1-2' }
          ],
          {
            value: '10k'
          }
        )
        .resistor('R2', '10k', 'TS1-2', 'GL1')
        .wire(1, 'B1 +', 'TS1-1')
    );
    expect(netAt(study, 'TS1', '2').dcV!.value).toBe(50);
  });

  it('a rectifier gives the peak of its winding before the tubes draw, and what is declared after', () => {
    const set = (dcV?: number) =>
      studyOf(
        chassis()
          .ground('GL1')
          .strip('TS1', 3)
          .part('transformer', 'T1', ['r1', 'ct', 'r2'], {
            elements: [
              { kind: 'source', current: 'ac', from: 'r1', to: 'ct', volts: 275 },
              { kind: 'source', current: 'ac', from: 'ct', to: 'r2', volts: 275 }
            ]
          })
          .part('rectifier', 'SR1', ['a', 'k'], {
            elements: [{ kind: 'rectifier', from: 'a', to: 'k' }]
          })
          .part('rectifier', 'SR2', ['a', 'k'], {
            elements: [{ kind: 'rectifier', from: 'a', to: 'k' }]
          })
          .resistor('R1', '1k', 'TS1-1', 'TS1-2')
          .wire(1, 'T1 ct', 'GL1')
          .wire(2, 'T1 r1', 'SR1 a')
          .wire(3, 'T1 r2', 'SR2 a')
          .wire(4, 'SR1 k', 'TS1-1', { function: 'B+', ...(dcV === undefined ? {} : { dcV }) })
          .wire(5, 'SR2 k', 'TS1-1')
          .wire(6, 'TS1-2', 'TS1-3')
      );
    // 275 V x 1.41421 x 1.1 = 427.8 V.
    const unloaded = set();
    expect(netAt(unloaded, 'TS1', '1').coldDcV!.value).toBeCloseTo(427.799, 2);
    expect(netAt(unloaded, 'TS1', '1').dcV).toBeNull();
    expect(netAt(unloaded, 'TS1', '2').coldDcV!.value).toBeCloseTo(427.799, 2);
    const loaded = set(300);
    expect(netAt(loaded, 'TS1', '2').dcV!.value).toBe(300);
    expect(loaded.network.disagreements).toEqual([]);
  });

  it('windings that swing against each other count their difference in one bundle', () => {
    const study = studyOf(
      chassis()
        .support('K1', 'clamp', [0, 0])
        .ground('GL1')
        .strip('TS1', 3)
        .part('transformer', 'T1', ['r1', 'ct', 'r2'], {
          elements: [
            { kind: 'source', current: 'ac', from: 'r1', to: 'ct', volts: 275 },
            { kind: 'source', current: 'ac', from: 'ct', to: 'r2', volts: 275 }
          ]
        })
        .wire(1, 'T1 ct', 'GL1')
        .wire(2, 'T1 r1', 'TS1-1', { route: ['K1'], function: 'ac to rectifier, line' })
        .wire(3, 'T1 r2', 'TS1-2', { route: ['K1'], function: 'ac to rectifier, line' })
    );
    // 550 V rms between the two: 777.8 V peak.
    const { stress } = study.wires.get('w2')!;
    expect(stress!.volts).toBeCloseTo(550 * Math.SQRT2, 6);
    expect(stress!.beside).toMatchObject({ wire: 'w3' });
  });

  const mates = (first: object, second: object) =>
    studyOf(
      chassis()
        .support('K1', 'clamp', [0, 0])
        .strip('TS1', 4)
        .wire(1, 'TS1-1', 'TS1-2', { ...first, route: ['K1'] })
        .wire(2, 'TS1-3', 'TS1-4', { ...second, route: ['K1'] })
    ).wires.get('w1')!.stress!;

  it('ac of unknown phase swings away from a rail on the other side of the chassis', () => {
    // By hand: 560 V + 45 V + 1.41421 x 40 V = 661.57 V.
    const stress = mates({ dcV: 560 }, { dcV: -45, acV: 40 });
    expect(stress.volts).toBeCloseTo(661.57, 2);
    expect(stress.basis).toBe('560 V dc against -45 V dc with 1.414 x 40 V ac of wire 2 beside it');
  });

  it('two of unknown phase swing against each other, and it says so', () => {
    // By hand: 1.41421 x (120 V + 90 V) = 296.98 V.
    const stress = mates({ dcV: 0, acV: 120 }, { dcV: 0, acV: 90 });
    expect(stress.volts).toBeCloseTo(296.98, 2);
    expect(stress.basis).toContain('phases not known: taken to swing against each other');
    // On one side of the chassis the dc between them is less: 200 - 150 + 1.41421 x 80 = 163.1 V,
    // and the first alone stands 200 + 1.41421 x 50 = 270.7 V.
    const same = mates({ dcV: 200, acV: 50 }, { dcV: 150, acV: 30 });
    expect(same.volts).toBeCloseTo(270.71, 2);
    expect(same.beside).toBeNull();
  });

  it('the two sides of one line stand no more apart than the line gives; a heater adds nothing', () => {
    const side = { acV: 117, function: 'line' };
    expect(mates(side, side)).toMatchObject({ beside: null });
    expect(mates({ dcV: 150, acV: 40 }, { acV: 6.3, function: 'heater' }).beside).toBeNull();
  });

  it('a rail beside a wire below the chassis stands the difference, the lower one its own', () => {
    const study = studyOf(
      chassis()
        .support('K1', 'clamp', [0, 0])
        .strip('TS1', 4)
        .wire(1, 'TS1-1', 'TS1-2', { dcV: 285, route: ['K1'] })
        .wire(2, 'TS1-3', 'TS1-4', { dcV: -60, route: ['K1'] })
    );
    expect(study.wires.get('w1')!.stress).toMatchObject({ volts: 345 });
    expect(study.wires.get('w1')!.stress!.basis).toBe(
      '285 V dc against -60 V dc of wire 2 beside it'
    );
    expect(study.wires.get('w2')!.stress).toMatchObject({ volts: 60, beside: null });
  });
});
