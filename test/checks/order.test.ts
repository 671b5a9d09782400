// What is written down wrongly: numbers, references, supplies that meet, colours.
import { documentSchema } from '#document/index.ts';
import { colourCode } from '#checks/rules/colour-code.ts';
import { numberTwice } from '#checks/rules/number-twice.ts';
import { referenceMissing } from '#checks/rules/reference-missing.ts';
import { suppliesJoined } from '#checks/rules/supplies-joined.ts';
import type { WireOptions } from '../helpers/chassis-options.ts';
import { chassis } from '../helpers/chassis.ts';
import { ruleTester } from '../helpers/rule-tester.ts';

const strips = () => chassis().strip('TS1', 8).strip('TS2', 8).ground('G1');
const oneWire = (options: WireOptions) => () => strips().wire(12, 'TS1-1', 'TS2-1', options);

ruleTester(numberTwice, {
  valid: {
    'all differ': () => strips().wire(1, 'TS1-1', 'TS2-1').wire(2, 'TS1-2', 'TS2-2'),
    'letters tell them apart': () => strips().wire('1a', 'TS1-1', null).wire('1b', 'TS1-2', null),
    'no number is no number': () => strips().wire('', 'TS1-1', null).wire('', 'TS1-2', null)
  },
  invalid: {
    'two of one number': [
      () => strips().wire(7, 'TS1-1', 'TS2-1').wire(9, 'TS1-3', 'TS2-3').wire(7, 'TS1-2', 'TS2-2'),
      {
        severity: 'fault',
        says: 'Number 7 stands on 2 wires: TS1-1 to TS2-1 and TS1-2 to TS2-2.',
        at: ['wire 7, TS1-1 to TS2-1', 'wire 7, TS1-2 to TS2-2'],
        fix: 'Keep 7 on the wire from TS1-1 to TS2-1; give TS1-2 to TS2-2 the number 10.',
        hasEdit: true
      }
    ],
    'blanks and capitals do not part them': [
      () =>
        strips().wire('12A', 'TS1-1', null).wire(' 12a', 'TS1-2', null).wire('12a', 'TS1-3', null),
      { severity: 'fault', says: 'Number 12A stands on 3 wires', hasEdit: true }
    ]
  }
});

/** A document with something taken away behind its back, as a merge can leave it. */
const broken =
  (change: (document: ReturnType<ReturnType<typeof strips>['build']>) => void) => () => {
    const document = structuredClone(
      strips().cable('coax 1', 'coax').wire(12, 'TS1-1', 'TS2-1', { cable: 'coax 1' }).build()
    );
    change(document);
    return documentSchema.parse(document);
  };

ruleTester(referenceMissing, {
  valid: { 'all is there': oneWire({}) },
  invalid: {
    'a part': [
      broken((document) => delete document.parts['pts2']),
      {
        severity: 'fault',
        says: 'The second end of wire 12 is at a part that is not in the document.',
        at: ['wire 12'],
        hasEdit: true
      }
    ],
    'a terminal and a cable of one wire': [
      broken((document) => {
        delete document.parts['pts1']!.terminals['t1'];
        delete document.cables['ccoax1'];
      }),
      {
        severity: 'fault',
        says: /first end of wire 12 .* and wire 12 is in a cable/,
        hasEdit: true
      }
    ],
    'a unit, which no edit can guess': [
      broken((document) => (document.parts['pts2']!.unit = 'unowhere')),
      { severity: 'fault', says: 'TS2 is in a unit', at: ['TS2'], hasEdit: false }
    ]
  }
});

ruleTester(suppliesJoined, {
  valid: {
    'one rail': () =>
      strips().wire(1, 'TS1-1', 'TS1-2', { dcV: 285 }).wire(2, 'TS1-2', 'TS1-3', { dcV: 280 }),
    'two rails apart': () =>
      strips().wire(1, 'TS1-1', 'TS1-2', { dcV: 285 }).wire(2, 'TS1-3', 'TS1-4', { dcV: 235 }),
    'the return of a heater': () => strips().wire(1, 'TS1-1', 'G1', { acV: 6.3 }),
    'a live chassis is another rule': () => strips().wire(1, 'TS1-1', 'G1', { acV: 117 }),
    'a cord that drops volts joins nothing': () =>
      strips()
        .wire(1, 'TS1-1', 'TS1-2', { dcV: 117 })
        .wire(2, 'TS1-2', 'TS1-3', { isPart: 'resistance cord' })
        .wire(3, 'TS1-3', 'TS1-4', { dcV: 60 })
  },
  invalid: {
    'two rails': [
      () =>
        strips()
          .wire(12, 'TS1-1', 'TS1-2', { function: 'B+ 285 V', dcV: 285 })
          .wire(17, 'TS1-2', 'TS1-3')
          .wire(31, 'TS1-3', 'TS1-4', { function: 'B+ 235 V', dcV: 235 }),
      {
        severity: 'fault',
        says: 'Wire 12 is declared at 285 V dc and wire 31 at 235 V dc, but they are connected by wire 17.',
        at: ['wire 12', 'wire 31']
      }
    ],
    'a rail and the chassis: one finding, with the way': [
      () =>
        strips()
          .wire(1, 'TS1-1', 'TS1-2', { dcV: 285 })
          .wire(2, 'TS1-2', 'TS1-3', { dcV: 285 })
          .wire(3, 'TS1-3', 'G1'),
      {
        severity: 'fault',
        says: 'Wires 1 and 2 are declared at 285 V dc, but they are connected to the chassis by wire 3.',
        at: ['wire 1', 'wire 2']
      }
    ],
    'plus and minus': [
      () =>
        strips().wire(1, 'TS1-1', 'TS1-2', { dcV: 100 }).wire(2, 'TS1-2', 'TS1-3', { dcV: -100 }),
      { severity: 'fault', says: '100 V dc and wire 2 at -100 V dc' }
    ],
    'a source says otherwise': [
      () =>
        chassis()
          .part('transformer', 'T1', ['B+'], {
            elements: [{ kind: 'source', current: 'dc', volts: 285, from: 'B+' }]
          })
          .strip('TS1', 2)
          .wire(5, 'T1 B+', 'TS1-1', { dcV: 235 }),
      { severity: 'fault', says: 'Wire 5 is declared at 235 V dc, but the source in T1' }
    ]
  }
});

ruleTester(colourCode, {
  valid: {
    'red for B+': oneWire({ function: 'B+', dcV: 285, planned: { colour: 'red' } }),
    'white is for all else': oneWire({ function: 'B+', planned: { colour: 'white' } }),
    'a colour that the code has not': oneWire({ function: 'B+', planned: { colour: 'pink' } }),
    'as it was found': oneWire({ function: 'B+', colour: 'blue', planned: { colour: 'blue' } }),
    'the function is not known': oneWire({ planned: { colour: 'black' } }),
    'a colour nobody can read': oneWire({ function: 'B+', planned: { colour: 'as before' } }),
    'found colours are the affair of the maker': oneWire({ function: 'B+', colour: 'black' })
  },
  invalid: {
    'black for B+': [
      oneWire({ function: 'B+ 285', planned: { colour: 'blk' } }),
      {
        severity: 'note',
        says: 'Wire 12 is planned in black, which the code gives to grounds, grounded elements and returns; for power supply B+ it has red.',
        hasEdit: true
      }
    ],
    'red on the chassis': [
      () => strips().wire(3, 'TS1-1', 'G1', { planned: { colour: 'red' } }),
      { severity: 'note', says: 'it has black', hasEdit: true }
    ],
    'a neighbour says that it is a rail': [
      () =>
        strips()
          .wire(1, 'TS1-1', 'TS1-2', { function: 'supply', dcV: 285 })
          .wire(2, 'TS1-2', 'TS1-3', { planned: { colour: 'green' } }),
      { severity: 'note', says: 'Wire 2 is planned in green', hasEdit: true }
    ]
  }
});
