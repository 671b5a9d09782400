// A layout can be stopped and can run out of time, each with words that say what to do, and tells how far
// it is.
import { describe, expect, it } from 'vitest';
import { buildDiagram, LayoutError } from '#drawing/index.ts';
import { buildStudy } from '#study/build-study.ts';
import { chassis } from '../helpers/chassis.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { layoutEngine } from '../helpers/layout-engine.ts';

const small = () =>
  buildStudy(
    chassis()
      .unit('Main chassis')
      .tube('V1', '6CG7')
      .strip('TS1', 3)
      .wire(1, 'V1-1', 'TS1-1')
      .unit('Tuner')
      .strip('TS2', 3)
      .wire(2, 'TS2-1', 'TS1-2')
      .build()
  );

const errorOf = async (run: Promise<unknown>): Promise<LayoutError> => {
  const error: unknown = await run.then(
    () => null,
    (reason: unknown) => reason
  );
  expect(error).toBeInstanceOf(LayoutError);
  return error as LayoutError;
};

describe('a layout', () => {
  it('ends when it is stopped, in the middle of the work', async () => {
    const stop = new AbortController();
    const seen: number[] = [];
    const run = buildDiagram(buildStudy(generateChassis(300, 1)), layoutEngine, {
      signal: stop.signal,
      timeLimitMs: 300_000,
      onProgress: ({ done }) => {
        seen.push(done);
        if (done === 1) stop.abort();
      }
    });
    const error = await errorOf(run);
    expect(error.why).toBe('stopped');
    expect(seen.at(-1)).toBe(1);
  });

  it('does not begin when it was stopped before', async () => {
    const error = await errorOf(
      buildDiagram(small(), layoutEngine, { signal: AbortSignal.abort() })
    );
    expect(error.why).toBe('stopped');
  });

  it('ends when its time is over, and says how long it had', async () => {
    const run = buildDiagram(buildStudy(generateChassis(300, 1)), layoutEngine, {
      timeLimitMs: 60
    });
    const error = await errorOf(run);
    expect(error.why).toBe('time');
    expect(error.message).toContain('0.06 s');
  });

  it('tells how far it is, step by step, until it is done', async () => {
    const seen: string[] = [];
    let last = { done: 0, of: 1 };
    await buildDiagram(small(), layoutEngine, {
      tries: 1,
      timeLimitMs: 60_000,
      onProgress: (progress) => {
        seen.push(progress.name);
        last = progress;
      }
    });
    expect(seen[0]).toBe('putting parts in layers');
    expect(seen.at(-2)).toBe('running the lines');
    expect(last.done).toBe(last.of);
  });
});

describe('a chassis without parts', () => {
  it('has a diagram that says so', async () => {
    const diagram = await buildDiagram(buildStudy(chassis().unit('Main').build()), layoutEngine);
    expect(diagram.remarks).toEqual(['no parts are recorded yet']);
  });
});
