// A layout can be stopped, runs out of time, fails, and reuses what it laid out before: each with words
// that say what to do.
import { afterEach, describe, expect, it } from 'vitest';
import { buildDiagram, LayoutError, type ElkGraph, type LayoutEngine } from '#drawing/index.ts';
import { buildStudy } from '#study/build-study.ts';
import { chassis } from '../helpers/chassis.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { startEngine } from '../helpers/layout-engine.ts';

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

const engines: LayoutEngine[] = [];
const start = (): LayoutEngine => {
  const engine = startEngine();
  engines.push(engine);
  return engine;
};
afterEach(() => {
  for (const engine of engines.splice(0)) engine.stop();
});

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
    const engine = start();
    const run = buildDiagram(buildStudy(generateChassis(1000, 1)), engine, { signal: stop.signal });
    setTimeout(() => stop.abort(), 150);
    const error = await errorOf(run);
    expect(error.why).toBe('stopped');
    // The engine can be used again.
    const again = await buildDiagram(small(), engine, { tries: 1 });
    expect(again.geometry.parts).toHaveLength(3);
  }, 60_000);

  it('does not begin when it was stopped before', async () => {
    const error = await errorOf(buildDiagram(small(), start(), { signal: AbortSignal.abort() }));
    expect(error.why).toBe('stopped');
  });

  it('ends when its time is over, and says how long it had', async () => {
    const run = buildDiagram(buildStudy(generateChassis(1000, 1)), start(), { timeLimitMs: 60 });
    const error = await errorOf(run);
    expect(error.why).toBe('time');
    expect(error.message).toContain('0.06 s');
  }, 60_000);

  it('says which unit the engine failed on', async () => {
    const failing: LayoutEngine = {
      layout: () => Promise.reject(new Error('out of memory')),
      stop: () => undefined
    };
    const error = await errorOf(buildDiagram(small(), failing));
    expect(error.why).toBe('engine');
    expect(error.message).toBe('the layout engine failed on unit "Main chassis": out of memory');
  });

  it('says so where the engine gives back no places', async () => {
    const empty: LayoutEngine = {
      layout: (graph: ElkGraph) => Promise.resolve({ id: graph.id }),
      stop: () => undefined
    };
    const error = await errorOf(buildDiagram(small(), empty));
    expect(error.message).toContain('without places');
  });

  it('tells how far it is, unit by unit', async () => {
    const seen: string[] = [];
    let last = { done: 0, of: 1 };
    await buildDiagram(small(), start(), {
      tries: 2,
      timeLimitMs: 60_000,
      onProgress: (progress) => {
        seen.push(progress.name);
        last = progress;
      }
    });
    expect(seen).toEqual(['Main chassis', 'Tuner', '', 'Main chassis', 'Tuner', '']);
    expect(last.done).toBe(last.of);
  }, 60_000);

  it('lays out only what has changed since the last time', async () => {
    const engine = start();
    const asked: string[] = [];
    const watched: LayoutEngine = {
      ...engine,
      layout: (graph) => {
        asked.push(graph.children?.[0]?.id ?? '');
        return engine.layout(graph);
      }
    };
    const cache = new Map();
    const options = { tries: 1, cache, timeLimitMs: 60_000 };
    const first = await buildDiagram(small(), watched, options);
    expect(asked).toHaveLength(3);
    asked.length = 0;
    const second = await buildDiagram(small(), watched, options);
    expect(asked).toEqual([]);
    expect(second.geometry.parts).toEqual(first.geometry.parts);
  }, 60_000);
});

describe('a chassis without parts', () => {
  it('needs no engine', async () => {
    const engine: LayoutEngine = {
      layout: () => Promise.reject(new Error('not to be asked')),
      stop: () => undefined
    };
    const diagram = await buildDiagram(buildStudy(chassis().unit('Main').build()), engine);
    expect(diagram.remarks).toEqual(['no parts are recorded yet']);
  });
});
