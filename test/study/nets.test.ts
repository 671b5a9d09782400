// Which points are connected, and what the nets are called.
import type { ChassisDocument } from '#document/index.ts';
import { buildStudy, terminalKey, type Net } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import { chassis } from '../helpers/chassis.ts';

/** The nets of a chassis by the labels of their terminals. */
const netOf = (document: ChassisDocument, part: string, terminal: string): Net => {
  const study = buildStudy(document);
  return study.nets.get(study.netOf.get(terminalKey(part, terminal)) ?? '')!;
};

describe('nets', () => {
  it('joins by wires whose both ends exist, and by nothing else', () => {
    const document = chassis()
      .strip('TS1', 5)
      .wire(1, 'TS1-1', 'TS1-2')
      .wire(2, 'TS1-2', 'TS1-3')
      .wire(3, 'TS1-4', null)
      .build();
    expect(netOf(document, 'pts1', 't1').terminals).toEqual(['pts1/t1', 'pts1/t2', 'pts1/t3']);
    expect(netOf(document, 'pts1', 't1').wires).toEqual(['w1', 'w2']);
    expect(netOf(document, 'pts1', 't4')).toMatchObject({ terminals: ['pts1/t4'], wires: ['w3'] });
    expect(netOf(document, 'pts1', 't5')).toMatchObject({ terminals: ['pts1/t5'], wires: [] });
  });

  it('takes the smallest key for an id', () => {
    const document = chassis().strip('TS1', 3).wire(1, 'TS1-3', 'TS1-2').build();
    expect(netOf(document, 'pts1', 't3').id).toBe('pts1/t2');
  });

  it('joins leads soldered to a terminal, and not the two ends of a resistor', () => {
    const document = chassis().strip('TS1', 3).resistor('R1', '47k', 'TS1-1', 'TS1-2').build();
    expect(netOf(document, 'pts1', 't1').terminals).toEqual(['pr1/ta', 'pts1/t1']);
    expect(netOf(document, 'pts1', 't2').terminals).toEqual(['pr1/tb', 'pts1/t2']);
  });

  it('joins plugs and jacks pin by pin, by name', () => {
    const document = chassis()
      .part('jack', 'J1', ['1', 'A'])
      .part('plug', 'P1', ['a ', '1', '2'], { mates: 'J1' })
      .build();
    expect(netOf(document, 'pj1', 't1').terminals).toEqual(['pj1/t1', 'pp1/t1']);
    expect(netOf(document, 'pj1', 'ta').terminals).toEqual(['pj1/ta', 'pp1/ta']);
    expect(netOf(document, 'pp1', 't2').terminals).toEqual(['pp1/t2']);
  });

  it('joins by closed links only', () => {
    const set = (closed: boolean) =>
      chassis()
        .part('switch', 'S1', ['1', '2'], {
          elements: [{ kind: 'link', what: 'switch', closed, from: '1', to: '2' }]
        })
        .build();
    expect(netOf(set(true), 'ps1', 't1').terminals).toHaveLength(2);
    expect(netOf(set(false), 'ps1', 't1').terminals).toHaveLength(1);
  });

  it('knows the chassis of all bonded units as one, and other metal apart', () => {
    const document = chassis()
      .unit('Main chassis')
      .ground('G1')
      .strip('TS1', 2, { grounded: [1] })
      .unit('Tuner')
      .ground('G2')
      .unit('Speaker', { metal: 'apart' })
      .ground('G3')
      .ground('G4')
      .unit('Cabinet', { metal: 'none' })
      .ground('G5')
      .ground('G6')
      .build();
    const chassisNet = netOf(document, 'pg1', 't1');
    expect(chassisNet).toMatchObject({ name: 'chassis', isChassis: true, isSupply: false });
    expect(chassisNet.terminals).toEqual(['pg1/t1', 'pg2/t1', 'pts1/t1']);
    expect(netOf(document, 'pg3', 't1')).toMatchObject({
      name: 'metal of Speaker',
      isChassis: false,
      terminals: ['pg3/t1', 'pg4/t1'],
      dcV: null
    });
    expect(netOf(document, 'pg5', 't1').terminals).toEqual(['pg5/t1']);
  });

  it('does not join the ends of a resistance cord or of a twisted-wire capacitor', () => {
    for (const isPart of ['resistance cord', 'twisted-wire capacitor'] as const) {
      const document = chassis().strip('TS1', 2).wire(1, 'TS1-1', 'TS1-2', { isPart }).build();
      expect(netOf(document, 'pts1', 't1').terminals, isPart).toHaveLength(1);
    }
    const loop = chassis().strip('TS1', 2).wire(1, 'TS1-1', 'TS1-2', { isPart: 'filament loop' });
    expect(netOf(loop.build(), 'pts1', 't1').terminals).toHaveLength(2);
  });

  it('leaves dangling references out', () => {
    const document = structuredClone(
      chassis().strip('TS1', 2).strip('TS2', 2).wire(1, 'TS1-1', 'TS2-1').build()
    );
    delete document.parts['pts2'];
    expect(netOf(document, 'pts1', 't1').terminals).toEqual(['pts1/t1']);
    document.wires['w1']!.from.at = { part: 'constructor', terminal: 'prototype' };
    expect(buildStudy(document).wires.get('w1')!.net).toBeNull();
  });
});

describe('names of nets', () => {
  const named = (words: string | undefined, volts: { dcV?: number; acV?: number }) => {
    const options = words === undefined ? volts : { function: words, ...volts };
    const document = chassis().strip('TS1', 2).wire(1, 'TS1-1', 'TS1-2', options).build();
    const { name, isSupply } = netOf(document, 'pts1', 't1');
    return { name, isSupply };
  };

  it('calls rails by their volts, heaters by theirs, all else by its function or first terminal', () => {
    expect(named('B+', { dcV: 285 })).toEqual({ name: 'B+ 285 V', isSupply: true });
    expect(named('B+ 235 V', { dcV: 236 })).toEqual({ name: 'B+ 235 V', isSupply: true });
    expect(named('heaters', { acV: 6.3 })).toEqual({ name: 'heaters 6.3 V', isSupply: false });
    expect(named('AGC', { dcV: -4 })).toEqual({ name: 'AGC', isSupply: false });
    expect(named(undefined, {})).toEqual({ name: 'TS1-1', isSupply: false });
  });

  it.each([
    ['B+', 285, true],
    ['B +', 285, true],
    ['boosted rail', 560, true],
    ['HT', 250, true],
    ['screen supply', 150, true],
    ['+285 V', 285, true],
    ['B+ of which nobody knows the volts', undefined, true],
    ['heater supply', 6.3, false],
    ['AC supply', 117, false],
    ['bass boost', 100, false],
    ['bias supply', -45, false],
    ['battery supply', 1.5, false],
    ['chassis', 0, false],
    ['plate', 200, false]
  ])('%s at %s V: supply %s', (words, dcV, expected) => {
    expect(named(words, dcV === undefined ? {} : { dcV }).isSupply).toBe(expected);
  });

  it('takes a dc source for a supply without any words', () => {
    const document = chassis()
      .part('transformer', 'T1', ['1'], {
        elements: [{ kind: 'source', current: 'dc', volts: 250, from: '1' }]
      })
      .ground('G1')
      .build();
    expect(netOf(document, 'pt1', 't1')).toMatchObject({ name: 'supply 250 V', isSupply: true });
  });
});
