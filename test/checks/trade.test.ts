// What an old hand looks for: kinds of rating, failing insulation, pins, parts that are wires,
// critical leads, service data, grounds, audio leads, crowded lugs.
import { criticalChanged } from '#checks/rules/critical-changed.ts';
import { dataDisagrees } from '#checks/rules/data-disagrees.ts';
import { endMisfit } from '#checks/rules/end-misfit.ts';
import { insulationFailing } from '#checks/rules/insulation-failing.ts';
import { leadsMissing } from '#checks/rules/leads-missing.ts';
import { noGround } from '#checks/rules/no-ground.ts';
import { ratingKind } from '#checks/rules/rating-kind.ts';
import { tiePin } from '#checks/rules/tie-pin.ts';
import { unshieldedAudio } from '#checks/rules/unshielded-audio.ts';
import { wireIsPart } from '#checks/rules/wire-is-part.ts';
import { readsAsFailing } from '#checks/condition.ts';
import { describe, expect, it } from 'vitest';
import type { WireOptions } from '../helpers/chassis-options.ts';
import { chassis } from '../helpers/chassis.ts';
import { ruleTester } from '../helpers/rule-tester.ts';

const oneWire = (options: WireOptions) => () =>
  chassis().strip('TS1', 8).strip('TS2', 8).wire(12, 'TS1-1', 'TS2-1', options);

ruleTester(ratingKind, {
  valid: {
    'a rating for any kind': oneWire({ dcV: 560, pulseV: 3400, ratingV: 5000 }),
    'dc on dc': oneWire({ dcV: 18_000, ratingV: 25_000, ratingKind: 'dc' }),
    'a filament of few volts on the dc': oneWire({
      dcV: 18_000,
      acV: 1.25,
      ratingV: 25_000,
      ratingKind: 'dc'
    }),
    'a pulse-rated lead with its dc': oneWire({
      dcV: 560,
      pulseV: 3400,
      ratingV: 5000,
      ratingKind: 'pulse'
    }),
    'something else is planned': oneWire({
      dcV: 560,
      pulseV: 3400,
      ratingV: 5000,
      ratingKind: 'dc',
      planned: { way: 'new wire', ratingV: 5000, ratingKind: 'pulse' }
    })
  },
  invalid: {
    'dc kilovolts on a pulse lead': [
      oneWire({ dcV: 560, pulseV: 3400, ratingV: 10_000, ratingKind: 'dc' }),
      {
        severity: 'caution',
        says: 'Wire 12 was found with insulation rated 10 kV for dc only; it carries 560 V dc with a pulse of 3.4 kV, and such a rating says nothing of a pulse of 3.4 kV.'
      }
    ],
    'planned so': [
      oneWire({ dcV: 100, acV: 275, planned: { ratingV: 600, ratingKind: 'dc' } }),
      { severity: 'caution', says: 'is planned with insulation rated 600 V for dc only' }
    ],
    'a pulse rating on steady dc': [
      oneWire({ dcV: 18_000, pulseV: 100, ratingV: 25_000, ratingKind: 'pulse' }),
      { severity: 'caution', says: 'says nothing of 18 kV dc' }
    ]
  }
});

ruleTester(insulationFailing, {
  valid: {
    sound: oneWire({ dcV: 285, condition: 'sound' }),
    'new wire is planned': oneWire({
      dcV: 285,
      condition: 'brittle',
      planned: { way: 'new wire' }
    }),
    'it is out': oneWire({ dcV: 18_000, condition: 'cracked', state: 'removed' }),
    'nobody wrote anything down': oneWire({ dcV: 285 })
  },
  invalid: {
    'at kilovolts': [
      oneWire({ dcV: 18_000, condition: 'cracked at the cup' }),
      {
        severity: 'danger',
        says: 'The insulation of wire 12 is failing (cracked at the cup), and it carries 18 kV dc.',
        hasEdit: true
      }
    ],
    'on rails, together': [
      () =>
        chassis()
          .strip('TS1', 6)
          .wire(1, 'TS1-1', 'TS1-2', { dcV: 285, condition: 'brittle' })
          .wire(2, 'TS1-3', 'TS1-4', { condition: 'dry, frays' })
          .wire(3, 'TS1-5', 'TS1-6', { dcV: 5, condition: 'brittle' }),
      {
        severity: 'fault',
        says: 'Wires 1 and 2 have failing insulation (brittle and dry, frays), and nothing new is planned for them.',
        at: ['wire 1', 'wire 2'],
        hasEdit: true
      },
      { severity: 'caution', says: 'Wire 3 has failing insulation (brittle)', at: ['wire 3'] }
    ],
    'kept all the same': [
      oneWire({ dcV: 285, condition: 'crumbles', planned: { way: 'keep' } }),
      { severity: 'fault', says: 'nothing new is planned for it' }
    ]
  }
});

describe('conditions as people write them', () => {
  it.each([
    'brittle',
    'Cracked',
    'dry, frays',
    'baked stiff',
    'taped over',
    'rubber gone',
    'scorched at R12',
    'bare at the lug'
  ])('%s: failing', (text) => expect(readsAsFailing(text)).toBe(true));
  it.each(['sound', 'good', 'no cracks', 'not brittle', 'bare bus', 'dusty', ''])(
    '%s: not failing',
    (text) => expect(readsAsFailing(text)).toBe(false)
  );
});

// 6C4: pin 2 has an internal connection; 0A2: pin 3 is one end of its jumper. From memory.
ruleTester(tiePin, {
  valid: {
    'a pin with a function': () =>
      chassis().tube('V1', '6CG7').strip('TS1', 1).wire(1, 'V1-3', 'TS1'),
    'the jumper of a regulator': () =>
      chassis().tube('V1', '0A2', { pins: 7 }).strip('TS1', 1).wire(1, 'V1-3', 'TS1'),
    'a tube that nobody knows': () =>
      chassis().tube('V1', 'ZZ99', { pins: 9 }).strip('TS1', 1).wire(1, 'V1-1', 'TS1')
  },
  invalid: {
    'a wire on an internal connection': [
      () => chassis().tube('V1', '6C4', { pins: 7 }).strip('TS1', 1).wire(1, 'V1-2', 'TS1'),
      {
        severity: 'note',
        says: /^Something is tied to V1-2, but that pin of the 6C4 has an internal connection \(from memory/,
        at: ['V1-2']
      }
    ]
  }
});

ruleTester(wireIsPart, {
  valid: {
    kept: oneWire({ isPart: 'resistance cord', planned: { way: 'keep' } }),
    'nothing planned': oneWire({ isPart: 'fuse link' }),
    'plain wire': oneWire({ planned: { way: 'new wire' } })
  },
  invalid: {
    'a resistance cord': [
      oneWire({ isPart: 'resistance cord', planned: { way: 'new wire' } }),
      {
        severity: 'fault',
        says: 'Wire 12 is a resistance cord, but new wire is planned for it: hook-up wire would put the whole line on the heaters.',
        hasEdit: true
      }
    ],
    'a filament loop': [
      oneWire({ isPart: 'filament loop', planned: { way: 'new wire', ratingV: 25_000 } }),
      { severity: 'caution', says: 'its turns make the volts' }
    ]
  }
});

ruleTester(criticalChanged, {
  valid: {
    taped: oneWire({ critical: { keepLength: true }, tapedMm: 42 }),
    dressed: oneWire({ critical: { keepPlace: true }, dress: 'close to the deck' }),
    'too short to go another way': oneWire({ critical: { keepPlace: true }, tapedMm: 45 }),
    kept: oneWire({ critical: { keepLength: true }, planned: { way: 'keep' } }),
    'a gauge next to it': oneWire({ critical: { keepShort: true }, awg: 22, planned: { awg: 21 } })
  },
  invalid: {
    'length not known': [
      oneWire({ critical: { keepLength: true } }),
      { severity: 'caution', says: 'Wire 12 has to keep its length, but its length is not known.' }
    ],
    'too late': [
      oneWire({ critical: { keepLength: true }, state: 'removed' }),
      { severity: 'fault', says: 'its length is not known' }
    ],
    'place not known': [
      oneWire({ critical: { keepPlace: true }, tapedMm: 200 }),
      { severity: 'caution', says: 'neither its route nor how it is dressed' }
    ],
    'spliced, in another gauge': [
      oneWire({ critical: { keepShort: true }, awg: 22, planned: { way: 'splice in', awg: 18 } }),
      { severity: 'caution', says: 'the joint changes it' },
      { severity: 'note', says: 'was 22 AWG; 18 AWG is planned' }
    ]
  }
});

ruleTester(dataDisagrees, {
  valid: {
    'no data': oneWire({ colour: 'blue' }),
    'the same colour, spelt otherwise': oneWire({
      colour: 'RED',
      tracer: 'yel',
      serviceData: { colour: 'red/yellow' }
    }),
    'only one of the two says': oneWire({ colour: 'red', serviceData: { awg: 20 } })
  },
  invalid: {
    'another colour': [
      oneWire({ colour: 'blue', serviceData: { colour: 'red' } }),
      { severity: 'note', says: 'Wire 12 was found as blue; the service data says red.' }
    ],
    thinner: [
      oneWire({ awg: 22, serviceData: { awg: 18 } }),
      { severity: 'caution', says: '22 AWG; the service data says 18 AWG' }
    ],
    'an earlier repair': [
      oneWire({ colour: 'blue', origin: 'earlier repair', serviceData: { colour: 'red' } }),
      { severity: 'caution', says: 'It is an earlier repair.' }
    ]
  }
});

const pictureTube = (grounded: boolean) => () => {
  const set = chassis()
    .unit('Main chassis')
    .ground('G1')
    .part('picture tube', 'V11', ['anode', 'outer coating']);
  return grounded ? set.wire(1, 'V11 outer coating', 'G1') : set;
};
const panel = (grounded: boolean) => () => {
  const set = chassis()
    .unit('Main chassis')
    .ground('G1')
    .unit('Panel', { metal: 'apart' })
    .ground('G2');
  return grounded ? set.wire(1, 'G1', 'G2') : set;
};

ruleTester(noGround, {
  valid: {
    'the coating is grounded': pictureTube(true),
    'the panel is grounded': panel(true),
    'a set whose whole metal floats by design': () =>
      chassis().unit('Main', { metal: 'apart' }).ground('G1')
  },
  invalid: {
    'the coating is not': [
      pictureTube(false),
      {
        severity: 'danger',
        says: 'The outer coating of the picture tube V11 is not connected to the chassis',
        at: ['V11 outer coating']
      }
    ],
    'the panel floats': [
      panel(false),
      {
        severity: 'caution',
        says: 'The metal of Panel is connected to nothing',
        at: ['Panel', 'metal at G2']
      }
    ],
    'no metal to be grounded to': [
      () =>
        chassis()
          .unit('Cabinet', { metal: 'none' })
          .strip('TS1', 2, { grounded: [1] }),
      { severity: 'note', says: 'TS1-1 is marked as grounded, but Cabinet has no metal' }
    ]
  }
});

ruleTester(unshieldedAudio, {
  valid: {
    short: oneWire({ function: 'volume control', tapedMm: 80 }),
    shielded: () =>
      chassis().strip('TS1', 2).cable('volume lead', 'shielded wire').wire(1, 'TS1-1', 'TS1-2', {
        function: 'volume control',
        tapedMm: 400,
        cable: 'volume lead'
      }),
    'a loudspeaker': oneWire({ function: 'speaker, audio output', tapedMm: 400 }),
    'never video': oneWire({ function: 'video from volume', tapedMm: 400 }),
    'somebody says how it lies': oneWire({ function: 'phono', tapedMm: 400, dress: 'on the deck' })
  },
  invalid: {
    'long and open': [
      oneWire({ function: 'audio to volume control', tapedMm: 430 }),
      {
        severity: 'note',
        says: 'Wire 12 carries low-level audio over 430 mm without a shield; from 150 mm on it may pick up hum.'
      }
    ]
  }
});

const post = (planned: WireOptions['planned']) => () =>
  chassis()
    .part('board', 'PC1', [
      { name: '1', ending: 'wrap post' },
      { name: '2', ending: 'wrap post' }
    ])
    .wire(12, 'PC1-1', 'PC1-2', {
      toEnd: { termination: 'solder' },
      ...(planned ? { planned } : {})
    });
const crowd = (wires: number) => () => {
  const set = chassis().strip('TS1', 2).strip('TS2', 20).resistor('R1', '1k', 'TS1-1', 'TS1-2');
  for (let n = 1; n <= wires; n++) set.wire(n, 'TS1-1', `TS2-${n}`);
  return set;
};

const atPin =
  (name: string, type = '6CG7') =>
  () =>
    chassis()
      .part('tube', 'V3', ['1', name], { type })
      .strip('TS1', 2)
      .wire(12, `V3${/^\d/.test(name) ? '-' : ' '}${name}`, 'TS1-1');

ruleTester(endMisfit, {
  valid: {
    'solid wire is wrapped': post({ stranding: 'solid', awg: 24 }),
    'nothing planned': post(undefined),
    'room on the lug': crowd(5),
    'the pins of the base': atPin('9'),
    'a cap is no pin': atPin('cap'),
    'nothing is at it': () => chassis().part('tube', 'V3', ['1', '99'], { type: '6CG7' })
  },
  invalid: {
    'stranded wire on a post': [
      post({ stranding: 'stranded', awg: 22 }),
      {
        severity: 'fault',
        says: 'Wire 12 is planned in stranded wire, but PC1-1 is a wrapped post'
      }
    ],
    'too thick for a wrap': [post({ awg: 12 }), { severity: 'fault', says: 'planned in 12 AWG' }],
    // The 6CG7 has the small-button noval base, nine pins (EIA base E9-1).
    'a pin that the base does not have': [
      atPin('99'),
      {
        severity: 'caution',
        says: 'V3 (6CG7) has pins 1 to 9; there is no pin 99.',
        at: ['V3-99']
      }
    ],
    'one beyond, of a base that is given by name': [
      atPin('9', 'octal'),
      { severity: 'caution', says: 'V3 (octal) has pins 1 to 8; there is no pin 9.' }
    ],
    'a crowded lug': [
      crowd(6),
      {
        severity: 'note',
        says: 'TS1-1 holds 7 leads (6 wires, 1 of components); a solder lug holds 6 well.'
      }
    ]
  }
});

const counted = (leads: number) => () =>
  chassis()
    .part('terminal strip', 'TS1', [{ name: '1', leadsCounted: leads }, '2'])
    .resistor('R1', '1k', 'TS1-1', 'TS1-2')
    .wire(1, 'TS1-1', 'TS1-2');

ruleTester(leadsMissing, {
  valid: { 'they agree': counted(2) },
  invalid: {
    'one is overlooked': [
      counted(3),
      {
        severity: 'caution',
        says: '3 leads were counted at TS1-1, but 2 are recorded: 1 too few.',
        at: ['TS1-1']
      }
    ],
    'one too many': [
      counted(1),
      { severity: 'note', says: '1 lead was counted at TS1-1, but 2 are recorded: 1 too many.' }
    ]
  }
});
