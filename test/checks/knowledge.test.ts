// What is not known: ratings, volts, parts of a stress, ends, lengths.
import { carriesUnknown } from '#checks/rules/carries-unknown.ts';
import { endUnknown } from '#checks/rules/end-unknown.ts';
import { endsAlike } from '#checks/rules/ends-alike.ts';
import { lengthMissing } from '#checks/rules/length-missing.ts';
import { ratingUnknown } from '#checks/rules/rating-unknown.ts';
import { stressPartial } from '#checks/rules/stress-partial.ts';
import type { WireOptions } from '../helpers/chassis-options.ts';
import { chassis } from '../helpers/chassis.ts';
import { ruleTester } from '../helpers/rule-tester.ts';

const oneWire = (options: WireOptions) => () =>
  chassis().strip('TS1', 4).strip('TS2', 4).wire(12, 'TS1-1', 'TS2-1', options);

ruleTester(endsAlike, {
  valid: {
    'two lugs of one strip': oneWire({}),
    'no end found': () => chassis().strip('TS1', 1).wire(1, null, null),
    'two ends on the chassis': () => chassis().ground('G1').ground('G2').wire(1, 'G1', 'G2')
  },
  invalid: {
    'one lug twice': [
      () => chassis().strip('TS1', 2).wire(12, 'TS1-1', 'TS1-1', { dcV: 285 }),
      {
        severity: 'fault',
        says: 'Wire 12 starts and ends at TS1-1: one of its ends is wrong.',
        at: ['wire 12'],
        hasEdit: true
      }
    ]
  }
});

ruleTester(ratingUnknown, {
  valid: {
    marked: oneWire({ dcV: 285, ratingV: 600 }),
    'a style tells it': oneWire({ dcV: 285, found: { style: '1015' } }),
    'the print is among the insulation': oneWire({ dcV: 285, insulation: 'AWM STYLE 1015 105C' }),
    'rated wire is planned': oneWire({ dcV: 5000, planned: { ratingV: 10_000 } }),
    bare: oneWire({ dcV: 285, construction: 'bare bus' }),
    'a lead of a part': oneWire({ dcV: 285, construction: 'component lead' }),
    'a part itself': oneWire({ dcV: 18_000, isPart: 'filament loop' }),
    'the cable is rated': () =>
      chassis()
        .strip('TS1', 2)
        .strip('TS2', 2)
        .cable('coax 1', 'coax', { ratingV: 300 })
        .wire(1, 'TS1-1', 'TS2-1', { cable: 'coax 1' })
  },
  invalid: {
    'ordinary old wire is one note together': [
      () =>
        chassis()
          .strip('TS1', 4)
          .strip('TS2', 4)
          .wire(1, 'TS1-1', 'TS2-1', { dcV: 285 })
          .wire(2, 'TS1-2', 'TS2-2', { dcV: 100 })
          .wire(3, 'TS1-3', 'TS2-3'),
      {
        severity: 'note',
        says: '3 ordinary wires (1, 2 and 3) are of unknown rating',
        at: ['Bench set', 'wire 1', 'wire 2', 'wire 3']
      }
    ],
    'one alone': [oneWire({ dcV: 100 }), { severity: 'note', says: '1 ordinary wire (12) is of' }],
    'high voltage is a caution of its own': [
      oneWire({ dcV: 560, pulseV: 3400 }),
      {
        severity: 'caution',
        says: 'Wire 12 carries 560 V dc with a pulse of 3.4 kV, but nobody wrote down what its insulation is rated for. It needs the 5 kV class.',
        at: ['wire 12']
      }
    ],
    'kept on a rail': [
      oneWire({ dcV: 285, function: 'B+', planned: { way: 'keep' } }),
      { severity: 'caution', says: 'and is to be kept' }
    ],
    'a sleeve of unknown rating on a rail': [
      oneWire({ dcV: 285, function: 'B+', planned: { way: 're-sleeve' } }),
      { severity: 'caution', says: 'nobody wrote down what the sleeve is rated for' }
    ]
  }
});

ruleTester(carriesUnknown, {
  valid: {
    declared: oneWire({ dcV: 0, acV: 0, pulseV: 0 }),
    'a neighbour declares it': () =>
      chassis().strip('TS1', 3).wire(1, 'TS1-1', 'TS1-2', { dcV: 235 }).wire(2, 'TS1-2', 'TS1-3'),
    'on the chassis': () => chassis().strip('TS1', 2).ground('G1').wire(1, 'TS1-1', 'G1')
  },
  invalid: {
    nothing: [
      oneWire({}),
      {
        severity: 'caution',
        says: 'Wire 12: nothing is known of what it carries, so its class is not known. Until it is, propose nothing below the 600 V class',
        at: ['wire 12']
      }
    ],
    'no dc says nothing of ac and pulse': [
      oneWire({ dcV: 0 }),
      { severity: 'caution', says: 'nought' }
    ],
    'one finding for connected wires': [
      () =>
        chassis()
          .strip('TS1', 4)
          .wire(1, 'TS1-1', 'TS1-2')
          .wire(2, 'TS1-2', 'TS1-3')
          .wire(3, 'TS1-4', null),
      { severity: 'caution', says: 'Wires 1 and 2, joined at TS1-1,', at: ['wire 1', 'wire 2'] },
      { severity: 'caution', says: 'Wire 3', at: ['wire 3'] }
    ],
    'never below the highest rail of the unit': [
      () =>
        chassis()
          .strip('TS1', 4)
          .wire(1, 'TS1-1', 'TS1-2', { function: 'boosted B+', dcV: 560 })
          .wire(2, 'TS1-3', 'TS1-4'),
      { severity: 'caution', says: 'the 1 kV class (as the highest rail there, boosted B+ 560 V)' }
    ],
    'a heater string whose line side nobody knows': [
      () =>
        chassis()
          .ground('G1')
          .strip('TS1', 2)
          .part('lamp', 'I1', ['1', '2', '3'], {
            elements: [
              { kind: 'heater', volts: 6.3, amps: 0.15, from: '1', to: '2' },
              { kind: 'heater', volts: 6.3, amps: 0.15, from: '2', to: '3' }
            ]
          })
          .wire(1, 'I1-1', 'G1')
          .wire(2, 'I1-2', 'TS1-1'),
      { severity: 'caution', says: 'Wire 2: what is known of it is nought' }
    ],
    'a grid is a note': [
      oneWire({ function: 'AGC to grid' }),
      { severity: 'note', says: 'nothing is known' }
    ]
  }
});

ruleTester(stressPartial, {
  valid: {
    'dc alone on a rail': oneWire({ function: 'B+', dcV: 285 }),
    'the pulse is declared': oneWire({ function: 'horizontal yoke', dcV: 285, pulseV: 3400 }),
    'there is none, and somebody says so': oneWire({ function: 'yoke', dcV: 285, pulseV: 0 }),
    'nothing at all is another matter': oneWire({ function: 'horizontal yoke' }),
    'the power line has no dc': oneWire({ function: 'ac line', acV: 117 }),
    'a filament on a rail': oneWire({ function: 'rectifier filament', dcV: 297 })
  },
  invalid: {
    'a yoke lead without its pulse': [
      oneWire({ function: 'horizontal yoke', dcV: 285 }),
      {
        severity: 'caution',
        says: 'Wire 12 carries at least 285 V dc: the pulse (sweep circuit) is not known. It needs at least the 600 V class.'
      }
    ],
    'ac alone rides on something': [
      oneWire({ function: 'voice coil', acV: 3 }),
      { severity: 'note', says: 'the dc that it rides on is not known' }
    ],
    'a plate swings': [
      oneWire({ function: 'audio output plate', dcV: 250 }),
      { severity: 'note', says: 'the ac (plate) is not known' }
    ]
  }
});

ruleTester(endUnknown, {
  valid: { 'both ends seen': oneWire({}) },
  invalid: {
    'the far end': [
      () =>
        chassis()
          .strip('TS1', 2)
          .wire(71, 'TS1-1', null, { toEnd: { as: 'into the loom' } }),
      {
        severity: 'caution',
        says: 'Wire 71 starts at TS1-1; its other end has not been found (written down: "into the loom").'
      }
    ],
    'the near end': [
      () => chassis().strip('TS1', 2).wire(71, null, 'TS1-1'),
      { severity: 'caution', says: 'Wire 71 starts at TS1-1' }
    ],
    'neither end': [
      () => chassis().wire(71, null, null),
      { severity: 'caution', says: 'Wire 71 has no end that anybody has found.' }
    ],
    'out already': [
      () => chassis().strip('TS1', 2).wire(71, 'TS1-1', null, { state: 'removed' }),
      { severity: 'fault', says: 'and the wire has been removed' }
    ],
    'written down but never seen': [
      oneWire({ toEnd: { known: 'unknown' } }),
      { severity: 'note', says: 'nobody has seen that it ends at TS2-1' }
    ]
  }
});

ruleTester(lengthMissing, {
  valid: {
    taped: oneWire({ tapedMm: 200 }),
    drawn: () =>
      chassis()
        .strip('TS1', 2, { at: [0, 0] })
        .strip('TS2', 2, { at: [100, 0] })
        .wire(1, 'TS1-1', 'TS2-1'),
    'half traced': () => chassis().strip('TS1', 2).wire(1, 'TS1-1', null),
    kept: oneWire({ planned: { way: 'keep' } }),
    fitted: oneWire({ state: 'fitted' }),
    'a lead of a part': oneWire({ construction: 'component lead' })
  },
  invalid: {
    'neither taped nor placed': [oneWire({}), { severity: 'note', says: 'Wire 12 has no length.' }],
    'between units': [
      () =>
        chassis()
          .unit('Main chassis')
          .strip('TS1', 2, { at: [0, 0] })
          .unit('Tuner')
          .strip('TS2', 2, { at: [0, 0] })
          .wire(1, 'TS1-1', 'TS2-1'),
      { severity: 'note', says: 'the way from one unit to the other is not drawn' }
    ]
  }
});
