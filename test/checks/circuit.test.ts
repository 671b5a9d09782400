// Rules on the circuit as a whole: figures that disagree, shorts, supplies that float.
import { islandFloating } from '#checks/rules/island-floating.ts';
import { solvedDisagrees } from '#checks/rules/solved-disagrees.ts';
import { supplyShorted } from '#checks/rules/supply-shorted.ts';
import { chassis } from '../helpers/chassis.ts';
import type { ElementSpec } from '../helpers/chassis-options.ts';
import { ruleTester } from '../helpers/rule-tester.ts';

const dc = (volts: number, from = '+', to?: string): ElementSpec => ({
  kind: 'source',
  current: 'dc',
  volts,
  from,
  ...(to === undefined ? {} : { to })
});
const ac = (volts: number, from: string, to: string): ElementSpec => ({
  kind: 'source',
  current: 'ac',
  volts,
  from,
  to
});

/** 250 V through 10 k to a tube that draws 5 mA: 200 V stand there. */
const stage = () =>
  chassis()
    .strip('TS1', 4)
    .part('other', 'B1', ['+'], { elements: [dc(250)] })
    .part('other', 'V1', ['p'], { elements: [{ kind: 'load', from: 'p', amps: 0.005 }] })
    .resistor('R1', '10k', 'B1 +', 'TS1-1');

ruleTester(solvedDisagrees, {
  valid: {
    'a figure within a tenth': () => stage().wire(1, 'TS1-1', 'V1 p', { dcV: 215 }),
    'nothing declared': () => stage().wire(1, 'TS1-1', 'V1 p'),
    'a supply that is not recorded yet': () =>
      chassis()
        .ground('G1')
        .strip('TS1', 3)
        .part('other', 'B2', ['-'], { elements: [dc(-3, '-')] })
        .tube('V1', '6CG7')
        .resistor('R1', '47k', 'TS1-1', 'V1-1')
        .resistor('R2', '1M', 'TS1-1', 'B2 -')
        .wire(1, 'TS1-1', 'TS1-2', { dcV: 285 }),
    'a declared current above what is reckoned: signals come on top': () =>
      stage().wire(1, 'TS1-1', 'V1 p', { amps: 0.6 })
  },
  invalid: {
    'volts that the circuit does not give': [
      () => stage().wire(1, 'TS1-1', 'V1 p', { function: 'plate', dcV: 150 }),
      {
        severity: 'caution',
        says: 'declared on wire 1 at 150 V dc, but the circuit from B1 comes to 200 V',
        at: ['wire 1']
      }
    ],
    'the same with something left open is a note': [
      () =>
        stage()
          .tube('V2', '6CG7')
          .resistor('R2', '47k', 'TS1-1', 'V2-1')
          .wire(1, 'TS1-1', 'V1 p', { dcV: 150 }),
      { severity: 'note', says: 'What V2-1 does there is not described' }
    ],
    'a current below what is drawn': [
      () =>
        chassis()
          .part('other', 'B1', ['+'], { elements: [dc(250)] })
          .part('other', 'V1', ['p'], { elements: [{ kind: 'load', from: 'p', amps: 0.1 }] })
          .wire(1, 'B1 +', 'V1 p', { amps: 0.04 }),
      { severity: 'caution', says: 'declared at 40 mA, but the circuit draws 100 mA' }
    ]
  }
});

ruleTester(supplyShorted, {
  valid: {
    'a winding with one side on the chassis': () =>
      chassis()
        .ground('G1')
        .strip('TS1', 2)
        .part('transformer', 'T1', ['a', 'b'], { elements: [ac(6.3, 'a', 'b')] })
        .wire(1, 'T1 a', 'TS1-1')
        .wire(2, 'T1 b', 'G1'),
    'two windings side by side with the same volts': () =>
      chassis()
        .strip('TS1', 2)
        .part('transformer', 'T1', ['a', 'b', 'c', 'd'], {
          elements: [ac(6.3, 'a', 'b'), ac(6.3, 'c', 'd')]
        })
        .wire(1, 'T1 a', 'T1 c')
        .wire(2, 'T1 b', 'T1 d'),
    'sources with resistance of their own': () =>
      chassis()
        .strip('TS1', 2)
        .part('other', 'B1', ['+'], { elements: [{ ...dc(250), seriesOhms: 50 }] })
        .part('other', 'B2', ['+'], { elements: [{ ...dc(200), seriesOhms: 50 }] })
        .wire(1, 'B1 +', 'TS1-1')
        .wire(2, 'B2 +', 'TS1-1')
  },
  invalid: {
    'both sides of a winding on the chassis': [
      () =>
        chassis()
          .ground('G1')
          .ground('G2')
          .part('transformer', 'T1', ['a', 'b'], { elements: [ac(6.3, 'a', 'b')] })
          .wire(1, 'T1 a', 'G1')
          .wire(2, 'T1 b', 'G2'),
      {
        severity: 'fault',
        says: 'T1 gives 6.3 V ac, but its two sides are connected by wires 1 and 2',
        at: ['T1', 'wire 1', 'wire 2']
      }
    ],
    'a closed switch across a supply': [
      () =>
        chassis()
          .part('other', 'B1', [{ name: '+', on: 'S1-1' }], { elements: [dc(45)] })
          .part('switch', 'S1', ['1', { name: '2', grounded: true }], {
            elements: [{ kind: 'link', what: 'switch', from: '1', to: '2', closed: true }]
          }),
      { severity: 'fault', says: 'without any wire between' }
    ],
    'two supplies on one net': [
      () =>
        chassis()
          .strip('TS1', 2)
          .part('other', 'B1', ['+'], { elements: [dc(250)] })
          .part('other', 'B2', ['+'], { elements: [dc(180)] })
          .wire(1, 'B1 +', 'TS1-1')
          .wire(2, 'B2 +', 'TS1-1'),
      {
        severity: 'fault',
        says: 'B1 gives 250 V dc and B2 180 V dc between the same two nets',
        at: ['B2', 'B1']
      }
    ]
  }
});

const radio = () =>
  chassis()
    .ground('G1')
    .strip('TS1', 6)
    .part('other', 'B1', ['+', '-'], { elements: [dc(120, '+', '-')] })
    .part('other', 'V1', ['p', 'k'], {
      elements: [{ kind: 'load', from: 'p', to: 'k', amps: 0.04 }]
    })
    .wire(1, 'B1 +', 'V1 p', { function: 'B+' })
    .wire(2, 'V1 k', 'B1 -', { function: 'B-' });

ruleTester(islandFloating, {
  valid: {
    'a B- that a resistor ties to the chassis': () => radio().resistor('R1', '220k', 'V1 k', 'G1'),
    'rails whose volts are declared': () =>
      chassis()
        .strip('TS1', 2)
        .part('other', 'V1', ['p'], { elements: [{ kind: 'load', from: 'p', amps: 0.04 }] })
        .wire(1, 'TS1-1', 'V1 p', { dcV: 120 }),
    'the power line, which floats by nature': () =>
      chassis()
        .strip('TS1', 2)
        .part('plug', 'P1', ['1', '2'], { elements: [ac(117, '1', '2')] })
        .wire(1, 'P1-1', 'TS1-1', { function: 'ac line' })
        .wire(2, 'P1-2', 'TS1-2', { function: 'ac line' }),
    "a rectifier's filament winding, which stands at its rail": () =>
      chassis()
        .tube('V1', '5U4GB', { elements: [dc(300, '8')] })
        .part('transformer', 'T1', ['a', 'b'], { elements: [ac(5, 'a', 'b')] })
        .wire(1, 'T1 a', 'V1-2')
        .wire(2, 'T1 b', 'V1-8')
  },
  invalid: {
    'a supply with no path to the chassis': [
      radio,
      {
        severity: 'caution',
        says: 'The supply of B1 (120 V dc) has no path to the chassis that is recorded. Its volts are counted from B-',
        at: ['B1']
      }
    ],
    'a heater winding of which nothing is grounded': [
      () =>
        chassis()
          .tube('V1', '6CG7')
          .part('transformer', 'T1', ['a', 'b'], { elements: [ac(6.3, 'a', 'b')] })
          .wire(1, 'T1 a', 'V1-4')
          .wire(2, 'T1 b', 'V1-5'),
      { severity: 'note', says: 'The winding of T1 (6.3 V ac) has no path', at: ['T1'] }
    ],
    'a tube that nothing feeds': [
      () =>
        chassis()
          .ground('G1')
          .part('other', 'V1', ['p'], { elements: [{ kind: 'load', from: 'p', amps: 0.012 }] })
          .resistor('R1', '47k', 'V1 p', 'G1'),
      {
        severity: 'note',
        says: 'V1 is said to draw 12 mA, but no supply that is recorded feeds it',
        at: ['V1']
      }
    ],
    'a tube that is fed through too much': [
      () =>
        chassis()
          .part('other', 'B1', ['+'], { elements: [dc(250)] })
          .part('other', 'V1', ['p'], { elements: [{ kind: 'load', from: 'p', amps: 0.01 }] })
          .resistor('R1', '47k', 'B1 +', 'V1 p'),
      { severity: 'caution', says: 'what stands between B1 and there lets less through' }
    ]
  }
});
