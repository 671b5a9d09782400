// Segments: which wires share which piece of their way.
import { buildStudy } from '#study/index.ts';
import { listSegments, listStops, stopKey } from '#study/segments.ts';
import { describe, expect, it } from 'vitest';
import { chassis } from '../helpers/chassis.ts';

const set = chassis()
  .unit('Main', { size: [300, 200] })
  .support('K1', 'clamp', [60, 50])
  .support('K2', 'tie', [160, 50])
  .strip('TS1', 4, { at: [20, 50] })
  .strip('TS2', 4, { at: [220, 50] })
  .wire(1, 'TS1-1', 'TS2-1', { route: ['K1', 'K2'] })
  .wire(2, 'TS2-2', 'TS1-2', { route: ['K2', 'K1'] })
  .wire(3, 'TS1-3', 'TS2-3', { route: ['K1'] })
  .wire(4, 'TS1-4', null, { route: ['K1', 'K2'] })
  .wire(5, 'TS2-4', 'TS2-4', { route: ['K2', 'K1', 'K2'] })
  .wire(6, 'TS1-1', 'TS2-1')
  .wire(7, null, null)
  .build();
const { index } = buildStudy(set);
const segments = listSegments(set, index);
const wiresOn = (id: string): readonly string[] =>
  segments.find((segment) => segment.id === id)?.wires ?? [];

describe('segments', () => {
  it('puts wires of either direction on one segment, each once', () => {
    expect(wiresOn('sk1 sk2')).toEqual(['w1', 'w2', 'w4', 'w5']);
  });

  it('runs from terminal to support, to the next support, to terminal', () => {
    const stops = listStops(set, index, set.wires['w1']!).map(stopKey);
    expect(stops).toEqual(['pts1/t1', 'sk1', 'sk2', 'pts2/t1']);
    expect(wiresOn('pts1/t1 sk1')).toEqual(['w1']);
    expect(wiresOn('pts2/t1 sk2')).toEqual(['w1']);
  });

  it('goes straight from terminal to terminal where no support is named', () => {
    expect(wiresOn('pts1/t1 pts2/t1')).toEqual(['w6']);
  });

  it('ends at the last support of a wire whose far end nobody found', () => {
    expect(listStops(set, index, set.wires['w4']!).map(stopKey)).toEqual(['pts1/t4', 'sk1', 'sk2']);
    expect(segments.filter(({ wires }) => wires.includes('w7'))).toEqual([]);
  });

  it('says of each end whether it is a support or a terminal', () => {
    const segment = segments.find(({ id }) => id === 'pts1/t1 sk1');
    expect(segment?.ends).toEqual([
      { kind: 'terminal', key: 'pts1/t1' },
      { kind: 'support', id: 'sk1' }
    ]);
  });

  it('leaves out a support that is missing, and counts a place that repeats once', () => {
    const poorer = { ...set, supports: { sk2: set.supports['sk2']! } };
    expect(listStops(poorer, index, set.wires['w1']!).map(stopKey)).toEqual([
      'pts1/t1',
      'sk2',
      'pts2/t1'
    ]);
    expect(listStops(poorer, index, set.wires['w5']!).map(stopKey)).toEqual([
      'pts2/t4',
      'sk2',
      'pts2/t4'
    ]);
  });
});
