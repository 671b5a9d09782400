import { describe, expect, it } from 'vitest';
import { createReckoner, workHere, workRow, type Question } from '#editor/bench/sums/reckoner.ts';
import type { ReferenceRow } from '#physics/reference/reference-row.ts';

interface Asked {
  readonly ticket: number;
  readonly question: Question;
}

/** A worker that keeps what it is asked until it is told to answer. */
class PatientWorker extends EventTarget {
  asked: Asked[] = [];
  isEnded = false;
  postMessage(message: Asked): void {
    this.asked.push(message);
  }
  terminate(): void {
    this.isEnded = true;
  }
  answer(at: number): void {
    const { ticket, question } = this.asked[at]!;
    this.dispatchEvent(
      new MessageEvent('message', { data: { ticket, answer: workHere(question) } })
    );
  }
}

const start = () => {
  const workers: PatientWorker[] = [];
  const reckoner = createReckoner(() => {
    const worker = new PatientWorker();
    workers.push(worker);
    return worker as unknown as Worker;
  });
  return { workers, reckoner };
};

const row: ReferenceRow = {
  source: 'astm-b258',
  row: 1,
  target: 'wire-size',
  inputs: { awg: '36' },
  output: 'diameter',
  expected: 0.127,
  tolerance: 'exact',
  mark: 'verified',
  inCode: true,
  note: ''
};

describe('the reckoner', () => {
  it('starts its worker with the first question, and gives each answer to its own', async () => {
    const { workers, reckoner } = start();
    expect(workers).toHaveLength(0);
    const sum = reckoner.workSum('wire-size', { awg: '0000' });
    const reference = reckoner.workRow(row);
    workers[0]?.answer(1);
    workers[0]?.answer(0);
    // ASTM B258 fixes 4/0 at 0.4600 in and 36 AWG at 0.0050 in.
    expect(await sum).toMatchObject({ result: { results: { diameter: { value: 11.684 } } } });
    expect(await reference).toEqual({ ok: true, value: 0.127 });
    expect(workers).toHaveLength(1);
  });

  it('ends a worker in the middle, and starts another for the next question', async () => {
    const { workers, reckoner } = start();
    void reckoner.workSum('wire-size', { awg: '1' });
    reckoner.stop();
    expect(workers[0]?.isEnded).toBe(true);
    const next = reckoner.workSum('wire-size', { awg: '36' });
    workers[1]?.answer(0);
    expect(await next).toMatchObject({ state: 'found' });
  });

  it('does the work itself where the worker fails', async () => {
    const { workers, reckoner } = start();
    const sum = reckoner.workSum('wire-size', { awg: '36' });
    workers[0]?.dispatchEvent(new Event('error'));
    expect(await sum).toMatchObject({ state: 'found' });
  });

  it('says why a row has no figure', () => {
    expect(workRow({ ...row, inputs: { awg: '99' } })).toMatchObject({ ok: false });
    expect(workRow({ ...row, output: 'weight' })).toEqual({
      ok: false,
      problem: 'wire-size has no result weight for these inputs'
    });
  });
});
