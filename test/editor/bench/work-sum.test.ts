import { describe, expect, it } from 'vitest';
import {
  buildAnswerLines,
  lowerBoundWords,
  spokenAnswer,
  whyNoAnswer
} from '#editor/bench/sums/answer-words.ts';
import { exampleOf } from '#editor/bench/sums/sum-desk.svelte.ts';
import {
  addends,
  isComplete,
  readSheet,
  workSum,
  type Texts
} from '#editor/bench/sums/work-sum.ts';
import { findSum, sums } from '#physics/index.ts';

const sheetOf = (id: string, texts: Texts) => {
  const sum = findSum(id)!;
  const reading = readSheet(sum, texts);
  const answer = isComplete(reading) ? workSum(id, texts) : ({ state: 'waiting' } as const);
  return { sum, reading, answer, why: whyNoAnswer(sum, reading, answer) };
};

describe('a sum while it is filled in', () => {
  it('names what is missing and what is wrong, and has no answer', () => {
    const { answer, why } = sheetOf('voltage-drop', { awg: '22', length: '10q', amps: '1.2A' });
    expect(answer).toEqual({ state: 'waiting' });
    expect(why).toBe('No answer yet: length to put right; volts still needed.');
  });

  it('answers as soon as the last needed field is there', () => {
    // 6.3 V, 1.2 A over 10 ft there and back: 20 ft of 22 AWG at 16.14 ohm per 1000 ft (published
    // wire table) lose 0.387 V.
    const { sum, answer, why } = sheetOf('voltage-drop', {
      awg: '22',
      length: '10ft',
      amps: '1.2A',
      volts: '6.3V'
    });
    expect(why).toBe('');
    const lines = buildAnswerLines(sum, answer);
    expect(lines.map(({ label, main }) => `${label} ${main}`)).toEqual([
      'drop 387.4 mV',
      'percent 6.15 %',
      'at load 5.913 V'
    ]);
    expect(spokenAnswer(lines, false)).toBe('drop 387.4 mV, percent 6.15 %, at load 5.913 V');
  });

  it('gives no class from nothing: blank volts are not 0 V', () => {
    for (const id of Object.keys(addends)) {
      const { answer, why } = sheetOf(id, { margin: '2' });
      expect(answer.state, id).toBe('waiting');
      expect(why, id).toBe('No answer yet: at least one of dc, ac or pulse needed.');
    }
  });

  it('says "at least" while a part of the stress is blank', () => {
    const some = sheetOf('insulation-class', { dc: '285V' });
    expect(some.reading.countedAsNone).toEqual(['ac', 'pulse']);
    expect(lowerBoundWords(some.reading)).toBe(
      'A lower bound: ac and pulse are blank and count as nought. Type 0 where there is none.'
    );
    const lines = buildAnswerLines(some.sum, some.answer);
    expect(spokenAnswer(lines, true)).toMatch(/^stress at least 285 V, required at least 600 V/);
    const all = sheetOf('insulation-class', { dc: '285V', ac: '0', pulse: '0' });
    expect(lowerBoundWords(all.reading)).toBe('');
  });

  it('takes lower bounds from inputs that the registry has, with 0 V as what is taken', () => {
    for (const [id, names] of Object.entries(addends)) {
      const { fields } = readSheet(findSum(id)!, {});
      for (const name of names) expect(fields[name]).toEqual({ state: 'taken', words: '0 V' });
    }
  });

  it('tells what fields refuse only together, at the field or in words', () => {
    const falling = sheetOf('discharge', {
      capacitance: '100uF',
      resistance: '100k',
      from: '50V',
      to: '60V'
    });
    expect(falling.answer).toMatchObject({ state: 'refused', error: { input: 'to' } });
    expect(falling.why).toBe('No answer: to has to be put right.');
    const beyond = sheetOf('insulation-class', { dc: '60kV', ac: '0', pulse: '0' });
    expect(beyond.why).toMatch(/^No answer\. Stress: Outside the table: 60 kV/);
    expect(buildAnswerLines(beyond.sum, beyond.answer)).toEqual([]);
  });

  it('shows a result without a figure as having none', () => {
    const { sum, answer } = sheetOf('mismatch', { z1: '75', z2: '75' });
    const lines = buildAnswerLines(sum, answer);
    expect(lines.find(({ name }) => name === 'return_loss')?.main).toBeNull();
    expect(spokenAnswer(lines, false)).toContain('return loss no figure');
  });

  it.each(sums.map((sum) => [sum.id, sum] as const))('%s answers its own example', (id, sum) => {
    const texts = exampleOf(sum);
    const { reading, answer, why } = sheetOf(id, texts);
    expect(isComplete(reading), JSON.stringify(texts)).toBe(true);
    expect(why).toBe('');
    const lines = buildAnswerLines(sum, answer);
    expect(lines.map(({ name }) => name)).toEqual(Object.keys(sum.results));
    for (const { main } of lines) expect(main ?? '').not.toMatch(/NaN|Infinity|not known/);
  });
});
