import { beforeEach, describe, expect, it } from 'vitest';
import { SumDesk } from '#editor/bench/sums/sum-desk.svelte.ts';
import { workSum, type Answer } from '#editor/bench/sums/work-sum.ts';

let written: string[];
let asked: { texts: Readonly<Record<string, string>>; settle: (answer: Answer) => void }[];
let later: (() => void)[];
let stops: number;
let desk: SumDesk;

beforeEach(() => {
  written = [];
  asked = [];
  later = [];
  stops = 0;
  desk = new SumDesk({
    write: (hash) => written.push(hash),
    later: (run) => {
      later.push(run);
      return () => (later = later.filter((other) => other !== run));
    },
    reckoner: {
      workSum: (_id, texts) => new Promise((settle) => asked.push({ texts, settle })),
      stop: () => (stops += 1)
    }
  });
});

const pause = (): void => {
  for (const run of later.splice(0)) run();
};
const settled = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

describe('the desk', () => {
  it('opens what an address says, with its answer', () => {
    desk.openHash('#wire-size?awg=36');
    // ASTM B258 fixes 36 AWG at 0.0050 in.
    expect(desk.answer).toMatchObject({
      state: 'found',
      result: { results: { diameter: { value: 0.127, unit: 'mm' } } }
    });
    expect(desk.notice).toBe('');
    expect(written).toEqual([]);
  });

  it('shows the contents for no address, and says so for a sum that there is not', () => {
    desk.openHash('');
    expect([desk.sum, desk.notice]).toEqual([null, '']);
    desk.openHash('#horsepower?x=1');
    expect(desk.sum).toBeNull();
    expect(desk.notice).toContain('"horsepower"');
  });

  it('leaves out inputs that the sum does not have, and says which', () => {
    desk.openHash('#wire-size?awg=22&length=10ft');
    expect(desk.texts).toEqual({ awg: '22' });
    expect(desk.notice).toContain('length');
  });

  it('keeps what is typed in the address, bad input too', () => {
    desk.openHash('#wire-size');
    desk.type('awg', '22');
    desk.type('awg', '22q');
    expect(written).toEqual(['#wire-size?awg=22', '#wire-size?awg=22q']);
    expect(desk.texts).toEqual({ awg: '22q' });
  });

  it('never leaves an answer standing that is not of these texts', () => {
    desk.openHash('#wire-size?awg=22');
    expect(desk.answer.state).toBe('found');
    desk.type('awg', '22q');
    expect(desk.answer).toEqual({ state: 'waiting' });
    desk.type('awg', '');
    expect(desk.answer).toEqual({ state: 'waiting' });
  });

  it('remembers each sum while another is open, and forgets what is cleared', () => {
    desk.openHash('#wire-size?awg=22');
    desk.openHash('#stress?dc=285V');
    expect(desk.hashOf('wire-size')).toBe('#wire-size?awg=22');
    expect(desk.hashOf('bundle')).toBe('#bundle');
    desk.clear();
    expect(desk.texts).toEqual({});
    expect(written.at(-1)).toBe('#stress');
  });

  it('fills in an example that gives an answer', () => {
    desk.openHash('#voltage-drop');
    desk.takeExample();
    expect(desk.answer.state).toBe('found');
    expect(written.at(-1)).toContain('awg=22');
  });

  it('works long sums out beside the page, after a pause in typing', async () => {
    desk.openHash('#bundle?diameters=1.6');
    expect(desk.answer).toEqual({ state: 'working' });
    desk.type('diameters', '7x1.6');
    expect(later).toHaveLength(1);
    pause();
    expect(asked.map(({ texts }) => texts)).toEqual([{ diameters: '7x1.6' }]);
    asked[0]?.settle(workSum('bundle', { diameters: '7x1.6' }));
    await settled();
    expect(desk.answer).toMatchObject({ state: 'found' });
  });

  it('drops an answer that comes after its texts have changed', async () => {
    desk.openHash('#bundle?diameters=7x1.6');
    pause();
    const before = stops;
    desk.type('diameters', '7x1.6,');
    expect(stops).toBe(before + 1);
    asked[0]?.settle(workSum('bundle', { diameters: '7x1.6' }));
    await settled();
    expect(desk.answer.state).not.toBe('found');
  });
});
