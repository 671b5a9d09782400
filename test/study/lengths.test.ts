// Lengths: taped, along the path at true scale, and what to cut.
import { buildStudy, findTerminalPlace, type WireStudy } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import type { WireOptions } from '../helpers/chassis-options.ts';
import { chassis, type ChassisBuilder } from '../helpers/chassis.ts';

const first = (set: ChassisBuilder): WireStudy => [...buildStudy(set.build()).wires.values()][0]!;

/** Two lugs 300 mm apart and, between them, supports that make two sides of a 3-4-5 triangle. */
const bench = () =>
  chassis()
    .part('other', 'A', ['1'], { at: [0, 0] })
    .part('other', 'B', ['1'], { at: [300, 0] })
    .support('K1', 'clamp', [0, 400])
    .support('K2', 'clamp', [300, 400]);

describe('length', () => {
  it('is what the tape said, whatever is drawn', () => {
    const { length } = first(bench().wire(1, 'A', 'B', { tapedMm: 412, route: ['K1'] }));
    expect(length).toEqual({ mm: 412, how: 'taped', basis: 'taped lug to lug' });
  });

  it('runs straight, or along its supports', () => {
    expect(first(bench().wire(1, 'A', 'B')).length).toMatchObject({
      mm: 300,
      how: 'drawn',
      basis: 'straight from end to end, drawn to scale'
    });
    // 400 up, then the long side of the triangle: 3-4-5.
    expect(first(bench().wire(1, 'A', 'B', { route: ['K1'] })).length).toMatchObject({
      mm: 900,
      basis: 'along 1 support, drawn to scale'
    });
    expect(first(bench().wire(1, 'A', 'B', { route: ['K1', 'K2'] })).length!.mm).toBe(1100);
  });

  it('adds heights where both are known, and the length outside', () => {
    const set = () =>
      chassis()
        .part('other', 'A', [{ name: '1', heightMm: 20 }], { at: [0, 0] })
        .part('other', 'B', [{ name: '1', heightMm: 5 }], { at: [100, 0] })
        .part('other', 'C', ['1'], { at: [100, 0] })
        .support('K1', 'clamp', [50, 0], { heightMm: 30 });
    expect(first(set().wire(1, 'A', 'B')).length!.mm).toBe(115);
    expect(first(set().wire(1, 'A', 'B', { route: ['K1'] })).length!.mm).toBe(100 + 10 + 25);
    expect(first(set().wire(1, 'A', 'C')).length!.mm).toBe(100);
    expect(first(set().wire(1, 'A', 'B', { outsideMm: 60 })).length).toMatchObject({
      mm: 175,
      basis: 'straight from end to end, drawn to scale, 60 mm outside the drawing'
    });
  });

  it('counts the offset of a terminal, turned with its part', () => {
    const set = chassis()
      .part('other', 'A', [{ name: '1', offset: [10, 0] }], { at: [0, 0], rotation: 90 })
      .part('other', 'B', ['1'], { at: [0, 110] })
      .wire(1, 'A', 'B');
    const document = set.build();
    const part = document.parts['pa']!;
    // A quarter turn clockwise, y down the page: what pointed right points down.
    const place = findTerminalPlace(part, part.terminals['t1']!)!;
    expect(place.x).toBeCloseTo(0, 9);
    expect(place.y).toBeCloseTo(10, 9);
    expect(buildStudy(document).wires.get('w1')!.length!.mm).toBeCloseTo(100, 9);
  });

  it('between units is known only with the way outside given', () => {
    const set = (options: WireOptions) =>
      chassis()
        .unit('Main chassis')
        .part('other', 'A', ['1'], { at: [0, 0] })
        .support('K1', 'hole', [0, 50])
        .unit('Yoke')
        .support('K2', 'clamp', [500, 500])
        .part('other', 'B', ['1'], { at: [500, 520] })
        .wire(1, 'A', 'B', options);
    expect(first(set({ route: ['K1', 'K2'] })).length).toBeNull();
    expect(first(set({ route: ['K1', 'K2'], outsideMm: 300 })).length!.mm).toBe(50 + 300 + 20);
  });

  it('is not known where an end or a support has no place', () => {
    expect(first(bench().wire(1, 'A', null)).length).toBeNull();
    expect(first(bench().strip('TS1', 1).wire(1, 'A', 'TS1')).length).toBeNull();
    const document = structuredClone(
      bench()
        .wire(1, 'A', 'B', { route: ['K1'] })
        .build()
    );
    delete document.supports['sk1'];
    expect(buildStudy(document).wires.get('w1')!.length).toBeNull();
  });
});

describe('cut length: common practice, no source', () => {
  const taped = (options: WireOptions, policy = {}) =>
    first(
      chassis('Bench set', policy)
        .part('other', 'A', [{ name: '1', ending: 'solder lug' }])
        .part('other', 'B', [{ name: '1', ending: 'wrap post' }])
        .wire(1, 'A', 'B', { tapedMm: 200, ...options })
    );

  it('adds slack and strips and rounds up', () => {
    const { cut } = taped({ fromEnd: { stripMm: 9 }, toEnd: { stripMm: 9 } });
    // 200 + 5 % + 10 + 9 + 9 = 238, up to the next 5 mm.
    expect(cut).toMatchObject({ mm: 240, slackMm: 20, stripFromMm: 9, stripToMm: 9 });
    expect(cut!.basis).toBe('200 + slack 20 + strips 9 and 9, up to the next 5 mm');
  });

  it('strips by the ending and the gauge where nobody gave a length', () => {
    const { cut } = taped({});
    // Solder lug: 8 mm + 3 diameters of 22 AWG (0.6438 mm, ASTM B258) = 9.93 mm.
    expect(cut!.stripFromMm).toBe(9.93);
    // Five turns on a 0.045 in post take far more.
    expect(cut!.stripToMm).toBeGreaterThan(30);
    expect(taped({ planned: { awg: 16 } }).cut!.stripFromMm).toBeGreaterThan(cut!.stripFromMm);
  });

  it('follows the policy', () => {
    const { cut } = taped(
      { fromEnd: { stripMm: 0 }, toEnd: { stripMm: 0 } },
      { slackShare: 0, slackMm: 1, roundUpMm: 50 }
    );
    expect(cut!.mm).toBe(250);
  });

  it('gives no slack to a lead that must keep its length', () => {
    const { cut } = taped({
      critical: { keepLength: true },
      fromEnd: { stripMm: 5 },
      toEnd: { stripMm: 5 }
    });
    expect(cut).toMatchObject({ mm: 210, slackMm: 0 });
    expect(cut!.basis).toContain('no slack: its length is kept');
  });

  it('is not known without a length', () => {
    expect(first(chassis().strip('TS1', 2).wire(1, 'TS1-1', 'TS1-2')).cut).toBeNull();
  });
});
