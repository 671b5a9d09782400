import { describe, expect, it } from 'vitest';
import {
  cautionsOfSum,
  choicesOf,
  resultLabel,
  resultWords,
  sumsWithCautions,
  unitsAtHandOf,
  withUnit
} from '#editor/bench/sums/sum-words.ts';
import { aboutInput, findSum, sums } from '#physics/index.ts';
import { parseQuantity } from '#quantity/index.ts';

const about = (id: string, name: string) => aboutInput(findSum(id)!.inputs, name);

describe('words for the page', () => {
  it('are about sums and results that there are', () => {
    for (const [id, words] of Object.entries(resultWords)) {
      const names = Object.keys(findSum(id)?.results ?? {});
      expect(names, id).toEqual(expect.arrayContaining(Object.keys(words)));
    }
    expect(sums.map(({ id }) => id)).toEqual(expect.arrayContaining([...sumsWithCautions]));
  });

  it('warn beside the sums that touch lethal voltages', () => {
    for (const id of ['discharge', 'anode-resistor', 'air-gap']) {
      const ids = cautionsOfSum(id).map((caution) => caution.id);
      expect(ids, id).toContain('competence');
    }
    expect(cautionsOfSum('discharge').map(({ id }) => id)).toContain('stored-charge');
    expect(cautionsOfSum('wire-size')).toEqual([]);
  });

  it('name a result without the unit behind its figure', () => {
    expect(resultLabel('clamp_mm')).toBe('clamp');
    expect(resultLabel('at_load')).toBe('at load');
  });
});

describe('units at hand', () => {
  it('are readable behind a number, for every input of every sum', () => {
    for (const sum of sums)
      for (const name of Object.keys(sum.inputs.shape)) {
        const { reading, unit } = aboutInput(sum.inputs, name);
        const dimension = reading.as === 'amount' ? reading.dimension : 'length';
        for (const symbol of unitsAtHandOf({ reading, unit, words: '', example: '' }))
          expect(parseQuantity(`5 ${symbol}`, dimension).ok, `${sum.id} ${name} ${symbol}`).toBe(
            true
          );
      }
    expect(unitsAtHandOf(about('voltage-drop', 'length'))).toEqual(['m', 'ft', 'in']);
    expect(unitsAtHandOf(about('bundle', 'diameters'))).toEqual(['mm', 'in', 'mil']);
    expect(unitsAtHandOf(about('voltage-drop', 'awg'))).toEqual([]);
    expect(unitsAtHandOf(about('air-gap', 'field'))).toEqual([]);
  });

  it.each([
    ['10', 'ft', '10 ft'],
    ['10 m', 'ft', '10 ft'],
    ['4.5kV', 'V', '4.5 V'],
    ['3/16"', 'mm', '3/16 mm'],
    ['4k7', 'Ω', '4k7 Ω'],
    ['1.6,2.4 mm', 'in', '1.6,2.4 in'],
    ['', 'ft', ''],
    ['abc', 'ft', 'abc']
  ])('take the place of the unit behind %j', (text, unit, wanted) => {
    expect(withUnit(text, unit)).toBe(wanted);
  });
});

describe('choices', () => {
  it('stand for a few words and for a few whole numbers, not for more', () => {
    expect(choicesOf(about('air-gap', 'pollution'))).toEqual(['1', '2', '3']);
    expect(choicesOf(about('voltage-drop', 'returns'))).toEqual(['1', '2']);
    expect(choicesOf(about('wire-resistance', 'plating'))).toEqual(['bare', 'tinned']);
    expect(choicesOf(about('ampacity', 'wires'))).toEqual([]);
    expect(choicesOf(about('wire-size', 'awg'))).toEqual([]);
  });
});
