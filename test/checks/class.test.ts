// Insulation against class, found and planned.
import { classReasoning } from '#checks/class-reasoning.ts';
import { classFound } from '#checks/rules/class-found.ts';
import { classPlanned } from '#checks/rules/class-planned.ts';
import { buildStudy } from '#study/index.ts';
import { expect, it } from 'vitest';
import type { WireOptions } from '../helpers/chassis-options.ts';
import { chassis } from '../helpers/chassis.ts';
import { ruleTester } from '../helpers/rule-tester.ts';

const oneWire = (options: WireOptions) => () =>
  chassis().strip('TS1', 4).strip('TS2', 4).wire(60, 'TS1-1', 'TS2-1', options);

ruleTester(classFound, {
  valid: {
    'the rating reaches the class': oneWire({ dcV: 18_000, ratingV: 25_000 }),
    'a rating between two steps covers stress x margin': oneWire({ dcV: 360, ratingV: 450 }),
    'nothing is known of the rating': oneWire({ dcV: 18_000 }),
    'nothing is known of the volts': oneWire({ ratingV: 300 }),
    'bare bus has no rating': oneWire({ dcV: 285, construction: 'bare bus' }),
    'the style is good enough': oneWire({ dcV: 285, found: { style: 'UL 1015' } }),
    'the old wire is out': oneWire({ dcV: 18_000, ratingV: 10_000, state: 'removed' }),
    'the new wire is in': oneWire({
      dcV: 18_000,
      ratingV: 10_000,
      planned: { way: 'new wire', ratingV: 25_000 },
      state: 'fitted'
    })
  },
  invalid: {
    'far below a high voltage': [
      oneWire({ dcV: 18_000, ratingV: 10_000 }),
      {
        severity: 'danger',
        says: 'Wire 60 was found with insulation rated 10 kV; it carries 18 kV dc and needs the 25 kV class (18 kV x 1.25 = 22.5 kV).',
        at: ['wire 60'],
        hasEdit: true
      }
    ],
    'high voltage, the margin is missing': [
      oneWire({ dcV: 18_000, ratingV: 20_000 }),
      { severity: 'fault', says: 'rated 20 kV' }
    ],
    'below the stress of a rail': [
      oneWire({ dcV: 400, function: 'B+', ratingV: 300 }),
      {
        severity: 'fault',
        says: 'needs the 600 V class (supply rail: 600 V at least (400 V x 1.25 = 500 V))'
      }
    ],
    'on a rail the floor is missing': [
      oneWire({ dcV: 200, function: 'B+ 200 V', found: { style: 'UL 1007' } }),
      { severity: 'caution', says: 'rated 300 V (UL 1007)' }
    ],
    'a pulse counts': [
      oneWire({ dcV: 285, pulseV: 5000, ratingV: 3000 }),
      {
        severity: 'danger',
        says: 'carries 285 V dc with a pulse of 5 kV and needs the 10 kV class'
      }
    ],
    'good new wire is planned': [
      oneWire({ dcV: 18_000, ratingV: 10_000, planned: { way: 'new wire', ratingV: 25_000 } }),
      { severity: 'caution', says: 'What is planned for it will do.', hasEdit: false }
    ],
    'it is to be kept': [
      oneWire({ dcV: 18_000, ratingV: 10_000, planned: { way: 'keep' } }),
      { severity: 'danger', says: 'It is to be kept.' }
    ],
    'it was kept': [
      oneWire({ dcV: 450, ratingV: 300, planned: { way: 'keep' }, state: 'checked' }),
      { severity: 'fault', says: 'It is to be kept.' }
    ],
    'a wire that is a part has no fix by hook-up wire': [
      oneWire({ dcV: 18_000, ratingV: 10_000, isPart: 'filament loop' }),
      { severity: 'danger', says: 'rated 10 kV', hasEdit: false }
    ],
    'the ladder ends': [
      oneWire({ dcV: 38_000, ratingV: 40_000 }),
      { severity: 'fault', says: 'needs more than the 40 kV class', hasEdit: false }
    ],
    'a lower bound is enough to condemn': [
      oneWire({ dcV: 400, function: 'horizontal yoke', ratingV: 300 }),
      {
        severity: 'fault',
        says: 'carries at least 400 V dc and needs at least the 600 V class',
        hasEdit: false
      }
    ],
    'what it rises to cold': [
      () =>
        chassis()
          .part('transformer', 'T1', ['B+'], {
            elements: [{ kind: 'source', current: 'dc', volts: 235, noLoadVolts: 300, from: 'B+' }]
          })
          .strip('TS1', 2)
          .wire(7, 'T1 B+', 'TS1-1', { ratingV: 300 }),
      // 300 V x 1.1 (high line) = 330 V; x 1.25 = 412.5 V.
      { severity: 'fault', says: 'carries 330 V dc cold and needs the 600 V class' }
    ]
  }
});

ruleTester(classPlanned, {
  valid: {
    'the plan reaches the class': oneWire({ dcV: 285, planned: { ratingV: 600 } }),
    'nothing is planned': oneWire({ dcV: 285, ratingV: 300 }),
    'kept wire is judged as found': oneWire({ dcV: 18_000, ratingV: 300, planned: { way: 'keep' } })
  },
  invalid: {
    'far below a high voltage': [
      oneWire({ dcV: 18_000, planned: { way: 'new wire', ratingV: 10_000 } }),
      { severity: 'danger', says: 'is planned with insulation rated 10 kV', hasEdit: true }
    ],
    '300 V wire on a rail of 235 V': [
      oneWire({ dcV: 235, function: 'B+', planned: { style: 'UL 1007' } }),
      {
        severity: 'fault',
        says: 'rated 300 V (UL 1007); it carries 235 V dc and needs the 600 V class',
        hasEdit: true
      }
    ],
    'it is in already': [
      oneWire({ dcV: 400, planned: { way: 'new wire', ratingV: 300 }, state: 'fitted' }),
      { severity: 'fault', says: 'was fitted with insulation rated 300 V' }
    ]
  }
});

it('names the class that passes, and the number as the reckoning only', () => {
  // 605 V x 1.25 = 756.3 V; the next step of the ladder is 1 kV.
  const study = buildStudy(oneWire({ dcV: 605, planned: { ratingV: 600 } })().build());
  const wire = study.index.wires[0]!;
  const reasoning = classReasoning(study, study.wires.get(wire.id)!, null);
  expect(reasoning.passes).toBe(
    'with insulation of the 1 kV class (by the reckoning 756.3 V and more), or with a lower stress declared from a measurement.'
  );
});
