// The shelf as people write it: fields, pasted rows, lengths out of ohms; wire that came out of the set; and
// the cutting in slices, with a stop.
import { CutWork } from '#editor/plan/cut-work.svelte.ts';
import { readStockRows } from '#editor/plan/read-stock-rows.ts';
import { salvageOf } from '#editor/plan/salvage.ts';
import { stockFields } from '#editor/plan/stock-fields.ts';
import { soldLength, stockLength } from '#editor/plan/stock-length.ts';
import type { Stock } from '#document/index.ts';
import { buildCutList, buildPlan, chanceFrom } from '#plan/index.ts';
import { buildStudy } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import { buildTelevision } from '../../demonstrations/television.ts';
import { chassis } from '../../helpers/chassis.ts';

const read = (id: string, text: string, stock: Partial<Stock> = {}, unit: 'mm' | 'in' = 'mm') => {
  const field = stockFields.find((each) => each.id === id);
  if (!field) throw new Error(`no field ${id}`);
  return field.read(text, stock, unit);
};

describe('a field of the shelf', () => {
  it.each([
    ['length', '12 m', { lengthMm: 12_000 }],
    ['length', '40 ft', { lengthMm: 12_192 }],
    ['length', '7', { lengthMm: 7000 }],
    ['price', '0.42', { pricePerMetre: 0.42 }],
    ['price', '0.42/m', { pricePerMetre: 0.42 }],
    ['colour', 'red/white', { colour: 'red', tracer: 'white' }],
    ['awg', '#22 solid', { awg: 22, stranding: 'solid' }],
    ['pulseV', '15kV', { ratings: { pulseV: 15_000 } }],
    ['pulseV', '', { ratings: { pulseV: null } }],
    ['kind', 'offcut', { kind: 'offcut' }]
  ])('%s takes "%s"', (id, text, fields) => {
    const reading = read(id, text);
    expect(reading.ok ? reading.fields : reading).toEqual(fields);
  });

  it('takes a price by the foot', () => {
    const reading = read('price', '0.13/ft');
    expect(reading.ok && reading.fields.pricePerMetre).toBeCloseTo(0.13 / 0.3048, 9);
  });

  // 22 AWG, annealed copper, 20 °C: 16.14 ohm per 1000 ft. Source: NBS Handbook 100, table of standard
  // annealed copper wire, AWG.
  it('reckons a length from the ohms of the whole', () => {
    const reading = read('length', '16.14 ohm', { awg: 22 });
    expect(reading.ok && (reading.fields.lengthMm ?? 0) / 304.8).toBeCloseTo(1000, -1);
    expect(read('length', '1.3 ohm')).toMatchObject({ ok: false });
  });

  it.each([
    ['length', 'a lot'],
    ['awg', 'thick'],
    ['price', 'cheap'],
    ['kind', 'drum'],
    ['ratingC', 'hot']
  ])('%s refuses "%s" and says why', (id, text) => {
    const reading = read(id, text);
    expect(reading.ok ? '' : reading.why).not.toBe('');
  });
});

describe('pasted rows', () => {
  it('with headings go into their fields', () => {
    const { drafts, problems } = readStockRows(
      'Name;Gauge;Colour;Volts;Length;Where\nreel;20;brown;600 V;12 m;tin\nshort;22;red;;2 m;',
      'mm'
    );
    expect(problems).toEqual([]);
    expect(drafts).toMatchObject([
      { name: 'reel', awg: 20, colour: 'brown', ratingV: 600, lengthMm: 12_000, where: 'tin' },
      { name: 'short', awg: 22, colour: 'red', lengthMm: 2000 }
    ]);
    expect(drafts[1]).not.toHaveProperty('ratingV');
  });

  it('without headings are read out of their words', () => {
    const { drafts } = readStockRows('22 AWG solid UL 1015 red, 12 m, 0.42/m, drawer 2', 'mm');
    expect(drafts).toMatchObject([
      {
        awg: 22,
        stranding: 'solid',
        style: 'UL 1015',
        colour: 'red',
        lengthMm: 12_000,
        pricePerMetre: 0.42,
        where: 'drawer 2'
      }
    ]);
  });

  it('keep what is not understood, and tell it', () => {
    const { drafts, problems } = readStockRows('name,gauge,length\nodd,thick,3 m', 'mm');
    expect(drafts).toMatchObject([{ name: 'odd', lengthMm: 3000, notes: 'thick' }]);
    expect(problems[0]).toMatch(/^Row 2/);
    expect(readStockRows('no length here', 'mm')).toMatchObject({
      drafts: [],
      problems: [expect.stringMatching(/no length on hand/)]
    });
  });
});

describe('lengths of the shelf', () => {
  it('are never more than there is', () => {
    expect(stockLength(16_585, 'mm')).toBe('16.58 m');
    expect(stockLength(155.9, 'mm')).toBe('155 mm');
    expect(stockLength(16_585, 'in')).toBe('54.4 ft');
    expect(soldLength(7620, 'foot')).toBe('25 ft');
    expect(soldLength(10_000, 'metre')).toBe('10 m');
  });
});

describe('wire that came out', () => {
  it('is stock without a rating, once', () => {
    const set = chassis().strip('TS1', 4).strip('TS2', 4);
    const old = { awg: 22, colour: 'red', ratingV: 600, tapedMm: 300, state: 'removed' } as const;
    set.wire('1', 'TS1-1', 'TS2-1', old);
    set.wire('2', 'TS1-2', 'TS2-2', { ...old, condition: 'brittle' });
    const [first, ...others] = salvageOf(buildStudy(set.build()));
    expect(others).toEqual([]);
    expect(first?.draft).toMatchObject({ kind: 'salvage', awg: 22, lengthMm: 300 });
    expect(first?.draft).not.toHaveProperty('ratingV');
    set.stock('out of wire 1', 300, { kind: 'salvage', outOf: first?.wire ?? '' });
    expect(salvageOf(buildStudy(set.build()))).toEqual([]);
  });
});

describe('cutting in slices', () => {
  const plan = buildPlan(buildStudy(buildTelevision()));
  /** A clock that goes on by a millisecond each time it is looked at. */
  const driver = () => {
    const waiting: (() => void)[] = [];
    let at = 0;
    return {
      waiting,
      now: () => (at += 1),
      later: (run: () => void) => void waiting.push(run)
    };
  };

  it('gives the list of the command line', () => {
    const { waiting, ...own } = driver();
    const work = new CutWork(own);
    work.cut(plan);
    expect(work.progress).not.toBeNull();
    let slices = 0;
    for (let run = waiting.shift(); run !== undefined; run = waiting.shift()) {
      run();
      slices += 1;
    }
    expect(slices).toBeGreaterThan(3);
    expect(work.done?.list).toEqual(buildCutList(plan, { chance: chanceFrom(1) }));
    expect(work.done?.list.isWhole).toBe(true);
  });

  it('stops when told, with every piece cut', () => {
    const { waiting, ...own } = driver();
    const work = new CutWork(own);
    work.cut(plan);
    work.stop();
    waiting.shift()?.();
    expect(waiting).toEqual([]);
    expect(work.done?.list.isWhole).toBe(false);
    const whole = buildCutList(plan, { chance: chanceFrom(1) });
    expect(work.done?.list.cutMm).toBeCloseTo(whole.cutMm, 6);
  });
});
