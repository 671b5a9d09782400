// The cage: flyback transformer, damper, high-voltage rectifier; from it the boosted rail, the yoke
// and the picture tube. The damper stands its cathode, and with it the whole winding, at 560 V dc.
import type { ChassisBuilder } from '../../helpers/chassis.ts';
import { acSource, draws, leads, lugs, octalLugs, winding } from '../set-parts.ts';
import { newWire, pigtail, thermoplastic } from '../wire-stock.ts';

const boosted = { function: 'boosted B+ 560 V', dcV: 560 };
export const addHighVoltage = (set: ChassisBuilder): void => {
  addCage(set);
  addTubeEnd(set);
  addSweepWires(set);
  addYokeWires(set);
  addAnodeWires(set);
};

const addCage = (set: ChassisBuilder): void => {
  set
    .in('Main chassis')
    .part(
      'transformer',
      'T2',
      [
        ...lugs({ '3': [-10, 18], '5': [0, 18], '6': [10, 18], '7': [20, 18] }, ['6']),
        ...leads(['2', '1'], -20),
        { name: 'F1', offset: [-22, -6], ending: 'pigtail' },
        { name: 'F2', offset: [-22, 6], ending: 'pigtail' }
      ],
      {
        at: [78, 235],
        function: 'horizontal output',
        elements: [
          winding('2', '3', 12),
          winding('3', '5', 20),
          winding('1', '2', 220),
          winding('7', '6', 2),
          acSource('F1', 'F2', 1.25),
          { kind: 'pulse', from: '2', peakV: 5000 },
          { kind: 'pulse', from: '3', peakV: 3400 },
          { kind: 'pulse', from: '1', peakV: 17_500 },
          { kind: 'pulse', from: '7', peakV: 250 }
        ],
        notes:
          '1 to rectifier cap, 2 to output plate, 3 damper and yoke tap, 5 boost, 6-7 pulse winding.'
      }
    )
    .tube('V14', '6DQ6B', {
      at: [118, 195],
      function: 'horizontal output',
      grounded: ['7', '8'],
      cap: { name: 'cap', offset: [-4, -4] },
      elements: [
        draws('cap', '8', 88),
        draws('4', '8', 12),
        { kind: 'source', current: 'dc', from: '5', to: '8', volts: -45, noLoadVolts: 0 }
      ],
      notes: 'The drive makes its own bias, 45 V, in grid current.'
    })
    .tube('V15', '6AX4GT', {
      at: [122, 275],
      function: 'damper',
      grounded: ['8'],
      elements: [{ kind: 'rectifier', from: '5', to: '3' }]
    })
    .tube('V16', '1B3GT', {
      at: [34, 205],
      function: 'high-voltage rectifier',
      cap: { name: 'cap', offset: [4, -4] },
      elements: [{ kind: 'source', current: 'dc', from: '7', volts: 18_000, noLoadVolts: 0 }]
    })
    .resistor('R53', '1M', 'V16-7', null, {
      watts: 2,
      at: [28, 250],
      function: 'limits the second-anode current',
      notes: 'Two 470 k in a glass sleeve, balls of solder at the ends.'
    })
    .strip('TS13', 4, { at: [85, 294], grounded: [3] })
    .capacitor('C44', '0.1 uF', 'TS13-1', 'V15-5', {
      ratedV: 1000,
      function: 'boost capacitor, charged by the damper',
      elements: [{ kind: 'source', current: 'dc', from: 'A', to: 'B', volts: 275, noLoadVolts: 0 }]
    })
    .resistor('R44', '470k', 'TS13-1', 'TS13-2', { watts: 1 })
    .resistor('R54', '100k', 'TS13-1', 'TS13-4', { watts: 1 })
    .part('jack', 'J1', octalLugs('solder lug', ['7']), {
      at: [100, 318],
      function: 'yoke',
      notes: 'Lug 7 is bent to the saddle.'
    });
};

const addTubeEnd = (set: ChassisBuilder): void => {
  set
    .in('Picture tube and yoke')
    .tube('V18', '21ALP4', {
      at: [55, 110],
      function: 'picture tube',
      cap: { name: 'anode', offset: [130, -70] },
      elements: [draws('anode', '11', 0.3)]
    })
    .part('yoke', 'DY1', lugs({ '1': [-15, -12], '2': [15, -12], '3': [-15, 12], '4': [15, 12] }), {
      at: [125, 110],
      function: 'deflection yoke, 90 degrees',
      elements: [winding('1', '2', 14), winding('3', '4', 42)],
      notes: '1 and 2 horizontal, 3 and 4 vertical.'
    })
    .part('plug', 'P1', octalLugs('plug pin'), { at: [60, 175], function: 'yoke', mates: 'J1' })
    .part('clip', 'E2', lugs({ '1': [0, 0] }), {
      at: [205, 150],
      function: 'spring on the outer coating'
    });
};

const addSweepWires = (set: ChassisBuilder): void => {
  set
    .wire(116, 'T2-2', 'V14 cap', {
      ...pigtail('blue', 10_000),
      insulation: 'polyethylene',
      ratingKind: 'pulse',
      function: 'horizontal output plate cap',
      dcV: 560,
      pulseV: 5000,
      amps: 0.088,
      tapedMm: 95,
      planned: { way: 'keep', colour: 'blue' }
    })
    .wire(117, 'V15-3', 'T2-3', {
      ...thermoplastic('yellow'),
      insulation: 'polyethylene, heavy wall',
      ratingV: 5000,
      ratingKind: 'pulse',
      function: 'damper cathode',
      dcV: 560,
      pulseV: 3400,
      amps: 0.088,
      tapedMm: 85,
      critical: { keepPlace: true },
      dress: 'Straight through the air, clear of the heater lead 17.'
    })
    .wire(118, 'T2-5', 'TS13-1', {
      ...thermoplastic('red'),
      tracer: 'yellow',
      ratingV: 1000,
      ...boosted,
      tapedMm: 75
    });
};

const addYokeWires = (set: ChassisBuilder): void => {
  const pulse = {
    ...thermoplastic('red'),
    insulation: 'polyethylene, heavy wall',
    ratingV: 5000,
    ratingKind: 'pulse' as const,
    function: 'horizontal yoke',
    dcV: 560,
    pulseV: 3400,
    amps: 0.6
  };
  const low = { ...thermoplastic('green'), function: 'vertical yoke', amps: 0.35 };
  set
    .wire(119, 'T2-3', 'J1-1', {
      ...pulse,
      tapedMm: 100,
      notes: 'Keep out of the bundle with 105 and 106.'
    })
    .wire(120, 'TS13-1', 'J1-3', {
      ...thermoplastic('red'),
      tracer: 'yellow',
      ratingV: 1000,
      function: 'horizontal yoke, boosted side',
      dcV: 560,
      pulseV: 60,
      amps: 0.6,
      tapedMm: 60
    })
    .cable('yoke cable', 'multi-conductor', { signal: 'deflection', jacket: 'vinyl tube' })
    .wire(121, 'P1-1', 'DY1-1', { ...pulse, cable: 'yoke cable', conductor: 'red', tapedMm: 510 })
    .wire(122, 'P1-3', 'DY1-2', {
      ...thermoplastic('red'),
      tracer: 'white',
      ratingV: 1000,
      function: 'horizontal yoke, boosted side',
      dcV: 560,
      pulseV: 60,
      amps: 0.6,
      cable: 'yoke cable',
      conductor: 'red/white',
      tapedMm: 510
    })
    .wire(123, 'P1-5', 'DY1-3', { ...low, cable: 'yoke cable', conductor: 'green', tapedMm: 510 })
    .wire(124, 'P1-7', 'DY1-4', {
      ...low,
      colour: 'black',
      function: 'vertical yoke return',
      cable: 'yoke cable',
      conductor: 'black',
      tapedMm: 510
    });
};

const addAnodeWires = (set: ChassisBuilder): void => {
  const loop = {
    construction: 'pigtail',
    isPart: 'filament loop' as const,
    awg: 20,
    colour: 'white',
    insulation: 'polyethylene',
    ratingV: 25_000,
    ratingKind: 'dc' as const,
    function: 'HV rectifier filament loop',
    dcV: 18_000,
    acV: 1.25,
    amps: 0.2,
    planned: { way: 'keep' as const }
  };
  set
    .wire(125, 'T2-1', 'V16 cap', {
      ...pigtail('white', 25_000),
      insulation: 'polyethylene',
      ratingKind: 'pulse',
      function: 'HV rectifier plate cap',
      dcV: 560,
      pulseV: 17_500,
      tapedMm: 85,
      planned: { way: 'keep', colour: 'white' },
      dress: 'Round joints, no points.'
    })
    .wire(126, 'T2 F1', 'V16-2', { ...loop, tapedMm: 55, notes: 'One turn round the core.' })
    .wire(127, 'T2 F2', 'V16-7', { ...loop, tapedMm: 60, notes: 'Other end of 126’s turn.' })
    .wire(128, 'R53 B', 'V18 anode', {
      awg: 22,
      colour: 'red',
      insulation: 'rubber',
      ratingV: 15_000,
      ratingKind: 'dc',
      condition: 'cracked at the cup',
      found: { stranding: 'stranded', plating: 'tinned' },
      function: 'second anode',
      dcV: 18_000,
      route: ['G5'],
      outsideMm: 420,
      tapedMm: 520,
      toEnd: { termination: 'cap' },
      dress: 'Free in air, two inches from metal, no bends tighter than the cup’s.',
      notes: 'Stamped 15 KV.'
    })
    .wire(129, 'TS2-2', 'V18-6', {
      ...thermoplastic('violet'),
      function: 'focus',
      dcV: 285,
      route: ['G4'],
      outsideMm: 420,
      tapedMm: 500,
      notes: 'Tried on chassis, B+ and boost: sharpest on B+.'
    })
    .wire(130, 'TS13-4', 'V18-10', {
      ...thermoplastic('orange'),
      ratingV: 1000,
      function: 'picture tube screen, boosted',
      dcV: 560,
      route: ['G1', 'G4'],
      outsideMm: 420,
      tapedMm: 610,
      planned: newWire('orange')
    });
};
