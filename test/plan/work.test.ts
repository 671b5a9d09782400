// Order of work, shopping, test sheets: what they say, and above all what they never say.
import {
  buildCutList,
  buildPlan,
  buildShoppingList,
  buildTestSheets,
  chanceFrom,
  chargedParts,
  judgeReading,
  orderOfWork,
  type Expectation,
  type TestRow
} from '#plan/index.ts';
import { buildStudy } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import { buildTelevision } from '../demonstrations/television.ts';

const study = buildStudy(buildTelevision());
const plan = buildPlan(study);
const numberOf = (id: string): string => study.document.wires[id]?.number ?? '';
const sheets = buildTestSheets(study);
const rowsOf = (id: string): readonly TestRow[] =>
  sheets.find((sheet) => sheet.id === id)?.rows ?? [];

describe('the order of work', () => {
  it('is one wire after the other where nothing else is asked for', () => {
    const steps = orderOfWork(study, plan);
    expect(steps.length).toBeGreaterThan(20);
    expect(steps.every(({ wires }) => wires.length === 1)).toBe(true);
    const done = plan.wires.filter(({ by }) => by === 'done').map(({ wire }) => wire);
    const inTurn = steps.flatMap(({ wires }) => wires.map(({ wire }) => wire));
    expect(inTurn.filter((wire) => done.includes(wire))).toEqual([]);
  });

  it('begins with the heaters on a bare chassis and ends with the second anode', () => {
    const steps = orderOfWork(study, plan, 'bare chassis');
    const titleOf = (number: string) =>
      steps.find(({ wires }) => wires.some(({ wire }) => numberOf(wire) === number))?.title;
    expect(steps[0]?.title).toBe('Heaters');
    expect(steps.at(-1)?.title).toBe('Pulse and high-voltage leads');
    expect(titleOf('10')).toBe('Heaters');
    expect(titleOf('43')).toBe('Supplies');
    expect(titleOf('132')).toBe('Shielded and radio frequency');
    expect(titleOf('128')).toBe('Pulse and high-voltage leads');
  });

  it('holds every wire once, whatever the mode', () => {
    const all = (mode: 'one socket' | 'bare chassis') =>
      orderOfWork(study, plan, mode)
        .flatMap(({ wires }) => wires.map(({ wire }) => wire))
        .sort();
    const single = orderOfWork(study, plan)
      .flatMap(({ wires }) => wires.map(({ wire }) => wire))
      .sort();
    expect(all('one socket')).toEqual(single);
    expect(all('bare chassis')).toEqual(single);
  });

  it('says so of critical leads', () => {
    const notes = orderOfWork(study, plan).flatMap(({ wires }) => wires);
    expect(notes.find(({ wire }) => numberOf(wire) === '77')?.notes.join()).toMatch(
      /keep its length and place/
    );
  });
});

describe('the shopping list', () => {
  const cuts = buildCutList(plan, { chance: chanceFrom(1) });
  const shopping = buildShoppingList(study, plan, cuts, chanceFrom(1));

  it('asks for as much as is missing, as it is sold', () => {
    const anode = shopping.lines.find(
      ({ what }) => what.startsWith('high-voltage lead') && what.includes('25 kV')
    );
    // 575 mm are two feet.
    expect(anode).toMatchObject({ count: 2, soldMm: 304.8, neededMm: 575 });
    for (const { count, soldMm, neededMm } of shopping.lines)
      if (count !== null && soldMm !== null && neededMm !== null)
        expect(count * soldMm).toBeGreaterThanOrEqual(neededMm - 1e-6);
  });

  it('makes no price up', () => {
    expect(shopping.isWhole).toBe(false);
    expect(
      shopping.lines.filter(({ kind }) => kind === 'tie').every(({ price }) => price === null)
    ).toBe(true);
  });

  it('names no wire whose length is not known without saying so', () => {
    const unknown = shopping.lines.find(({ wires }) => wires.some((id) => numberOf(id) === '147'));
    expect(unknown?.notes).toMatch(/not known/);
  });
});

describe('the test sheets', () => {
  it('keep the meter off output plate, damper and high voltage', () => {
    const barred = rowsOf('power-up').filter(({ doNotMeasure }) => doNotMeasure);
    const at = (where: string) => rowsOf('power-up').find((row) => row.where === where);
    expect(barred.length).toBeGreaterThan(5);
    for (const where of ['V14 cap', 'V15-3', 'V15-5', 'V18 anode', 'V11-5'])
      expect(at(where), where).toMatchObject({
        doNotMeasure: true,
        words: 'DO NOT MEASURE',
        expected: null
      });
    expect(rowsOf('power-up').some(({ where }) => where.startsWith('V16-'))).toBe(true);
    expect(
      rowsOf('power-up')
        .filter(({ where }) => where.startsWith('V16'))
        .every((row) => row.doNotMeasure)
    ).toBe(true);
  });

  it('expect what the service data says, to 20 %', () => {
    const row = rowsOf('power-up').find(({ where }) => where === 'V9-6');
    expect(row?.expected).toMatchObject({ least: 228, most: 342 });
    const grid = rowsOf('power-up').find(({ where }) => where === 'V14-5');
    expect(grid?.expected).toMatchObject({ least: -54, most: -36 });
  });

  it('never test insulation above the weakest part, nor where that is not known', () => {
    const rows = rowsOf('insulation');
    expect(rows.length).toBeGreaterThan(5);
    for (const { id, words, doNotMeasure, expected } of rows) {
      const about = study.wires.get(id.split(' ')[1] ?? '');
      const volts = /at (\d+) V \(/.exec(words)?.[1];
      if (doNotMeasure) expect(expected).toBeNull();
      else
        expect(Number(volts)).toBeLessThanOrEqual(
          about?.plannedRating?.volts ?? about?.foundRating?.volts ?? 0
        );
    }
  });

  it('offer no limit of leakage of their own', () => {
    const rows = rowsOf('leakage');
    expect(rows.length).toBeGreaterThan(10);
    expect(
      rows.every(({ expected, words }) => expected === null && /service data/.test(words))
    ).toBe(true);
    expect(new Set(rows.map(({ where }) => where)).size).toBe(4);
  });

  it('begin with what may be charged, and its "if"', () => {
    const charged = chargedParts(study);
    expect(charged[0]?.words).toMatch(/picture tube.*Assume that it is charged/);
    const timed = charged.filter(({ seconds }) => seconds !== null);
    expect(timed.length).toBeGreaterThan(0);
    expect(timed.every(({ words }) => words.endsWith('if the bleeder is good.'))).toBe(true);
  });
});

describe('a reading', () => {
  const expected: Expectation = {
    dimension: 'voltage',
    least: 228,
    most: 342,
    words: '285 V dc, 228 to 342 V',
    basis: ''
  };
  it.each([
    ['285', 'as expected'],
    ['0.285 kV', 'as expected'],
    ['200 V', 'too low'],
    ['420', 'too high'],
    ['', 'not judged'],
    ['about right', 'not judged']
  ])('of "%s" is %s', (typed, verdict) => {
    expect(judgeReading(expected, typed).verdict).toBe(verdict);
  });
  it('refuses a negative resistance in words', () => {
    const ohms = {
      dimension: 'resistance',
      least: 0,
      most: 0.4,
      words: 'below 0.4 Ω',
      basis: ''
    } as const;
    const judged = judgeReading(ohms, '-5 ohm');
    expect(judged.verdict).toBe('not judged');
    expect(judged.words).toBe(
      '"-5 ohm" is no reading: a resistance is never below 0 Ω. Look for a charge that is left, null the leads, and measure again'
    );
    expect(judgeReading(ohms, '0').verdict).toBe('as expected');
  });

  it('is not judged where nothing is expected', () => {
    expect(judgeReading(null, '285 V').verdict).toBe('not judged');
  });
});
