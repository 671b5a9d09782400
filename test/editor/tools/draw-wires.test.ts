import { describe, expect, it } from 'vitest';
import type { Wire } from '#document/index.ts';
import { drawWires } from '#editor/tools/wire/draw-wires.ts';
import { nextNumberOf } from '#editor/tools/wire/next-wire.ts';
import { chassis } from '../../helpers/chassis.ts';
import { ToolBench } from '../../helpers/tool-bench.ts';

const bench = () =>
  new ToolBench(
    drawWires,
    chassis()
      .unit('Main', { size: [300, 200] })
      .tube('V1', '6CG7', { at: [60, 60] })
      .tube('V2', '6CG7', { at: [140, 60] })
      .tube('V3', '6CG7', { at: [220, 60] })
      .strip('TS1', 4, { at: [100, 140] })
      .support('clamp 1', 'clamp', [180, 120])
      .build()
  );
type Bench = ReturnType<typeof bench>;

const press = (tool: Bench, name: string, more = {}): void => {
  const [part = '', terminal = ''] = name.split('-');
  const { at, subject } = tool.terminal(part, terminal);
  tool.pointer('hover', at, subject).pointer('tap', at, subject, more);
};
const typed = (tool: Bench, text: string): void => {
  for (const key of text) tool.key(key);
  tool.key('Enter');
};
const wires = (tool: Bench): readonly Wire[] => Object.values(tool.document.wires);
const ends = (tool: Bench): readonly string[] => {
  const { index } = tool.world.study;
  return wires(tool).map(({ from, to }) => `${index.labelOf(from)} ${index.labelOf(to)}`);
};

describe('terminal to terminal', () => {
  it('makes a wire by two presses, numbered on', () => {
    const tool = bench();
    for (const name of ['V1-5', 'V2-4', 'V2-5', 'TS1-1']) press(tool, name);
    expect(ends(tool)).toEqual(['V1-5 V2-4', 'V2-5 TS1-1']);
    expect(wires(tool).map(({ number }) => number)).toEqual(['1', '2']);
    expect(tool.edits).toHaveLength(2);
  });

  it('makes one by a drag from terminal to terminal, and none by a drag to nowhere', () => {
    const tool = bench();
    const [a, b] = [tool.terminal('V1', '5'), tool.terminal('V2', '4')];
    tool.pointer('grab', a.at, a.subject).pointer('drag', b.at, b.subject);
    expect(tool.claims || tool.state.isDragged).toBe(true);
    tool.pointer('drop', b.at, b.subject);
    tool.drag(a.at, { x: 10, y: 190 }, a.subject);
    expect(ends(tool)).toEqual(['V1-5 V2-4']);
  });

  it('chains: the end of one begins the next, a second press on it ends', () => {
    const tool = bench();
    tool.field('chains', 'on');
    for (const name of ['V1-4', 'V2-4', 'V3-4', 'V3-4', 'V1-1', 'TS1-1']) press(tool, name);
    expect(ends(tool)).toEqual(['V1-4 V2-4', 'V2-4 V3-4', 'V1-1 TS1-1']);
    tool.key('Enter');
    expect(tool.state.from).toBeNull();
  });

  it('goes on from the end of one wire alone with Shift', () => {
    const tool = bench();
    press(tool, 'V1-4');
    press(tool, 'V2-4', { shift: true });
    press(tool, 'V3-4');
    expect(ends(tool)).toEqual(['V1-4 V2-4', 'V2-4 V3-4']);
    expect(tool.state.from).toBeNull();
  });

  it('works by keys alone, two names a wire', () => {
    const tool = bench();
    typed(tool, 'v1-5');
    typed(tool, 'V2 pin 4');
    expect(ends(tool)).toEqual(['V1-5 V2-4']);
    typed(tool, 'V9-1');
    expect(tool.said.at(-1)).toMatch(/V9-1: no part of that name/);
    tool.key('Escape');
    typed(tool, 'V1-1');
    typed(tool, '?');
    expect(ends(tool)[1]).toBe('V1-1 ?');
    expect(wires(tool)[1]?.to).toEqual({ known: 'unknown' });
  });

  it('leaves the keys of the sheet alone until a name is begun', () => {
    const tool = bench();
    for (const key of ['+', '-', '0', '.', 'ArrowLeft']) expect(tool.key(key).claims).toBe(false);
    expect(tool.key('v').claims).toBe(true);
    expect(tool.key('1').key('-').claims).toBe(true);
    expect(tool.state.typed).toBe('v1-');
  });

  it('gives every wire of a run its gauge, colour and prefix, until they are changed', () => {
    const tool = bench();
    tool.field('gauge', '20').field('colour', 'brown/white').field('prefix', 'H');
    for (const name of ['V1-4', 'V2-4', 'V2-4', 'V3-4']) press(tool, name);
    expect(wires(tool).map(({ number }) => number)).toEqual(['H1', 'H2']);
    for (const { found } of wires(tool)) {
      expect(found).toEqual({ awg: 20, colour: 'brown', tracer: 'white' });
    }
    tool.field('gauge', '').field('colour', '').field('again');
    expect(tool.state).toMatchObject({ gauge: '20 AWG', colour: 'brown/white' });
  });

  it('makes nothing from a gauge that cannot be read, and says why', () => {
    const tool = bench();
    tool.field('gauge', 'thick');
    press(tool, 'V1-4');
    press(tool, 'V2-4');
    expect(wires(tool)).toHaveLength(0);
    expect(tool.said.at(-1)).toMatch(/\w/);
  });

  it('dresses a wire along the supports pressed on its way', () => {
    const tool = bench();
    press(tool, 'V1-5');
    tool.pointer('tap', { x: 180, y: 120 });
    press(tool, 'V3-5');
    const [support] = Object.keys(tool.document.supports);
    expect(wires(tool)[0]?.route).toEqual({ supports: [support], by: 'hand' });
  });

  it('gives up with Escape and makes nothing', () => {
    const tool = bench();
    press(tool, 'V1-5');
    expect(tool.key('Escape').claims).toBe(true);
    expect(tool.key('Escape').claims).toBe(false);
    expect(wires(tool)).toHaveLength(0);
  });

  it('begins anew where undo has taken its first terminal away', () => {
    const tool = bench();
    press(tool, 'V1-5');
    const { [tool.partNamed('V1').id]: gone, ...parts } = tool.document.parts;
    expect(gone).toBeDefined();
    tool.document = { ...tool.document, parts };
    press(tool, 'V2-5');
    expect(wires(tool)).toHaveLength(0);
    press(tool, 'V3-5');
    expect(ends(tool)).toEqual(['V2-5 V3-5']);
  });
});

describe('a wire in the hand', () => {
  const supplied = () =>
    new ToolBench(
      drawWires,
      chassis()
        .unit('Main', { size: [300, 200] })
        .tube('V1', '6CG7', { at: [60, 60] })
        .strip('TS1', 4, { at: [100, 140] })
        .tube('V2', '6CG7', { at: [140, 60] })
        .wire('1', 'TS1-1', 'V2-1', { dcV: 285 })
        .build()
    );

  it('is judged by what it would be joined to, before it is made', () => {
    const tool = supplied();
    press(tool, 'V1-1');
    const goal = tool.terminal('TS1', '1');
    tool.pointer('hover', goal.at, goal.subject);
    // 285 V x 1.25 = 356 V: above the step of 300 V on the policy's ladder.
    expect(tool.shown.words?.text).toMatch(/^2 to TS1-1: needs (at least )?600 V\n285 V dc/);
    expect(tool.shown.shapes[0]?.style).toBe('wire.600');
    expect(wires(tool)).toHaveLength(1);
  });

  it('never looks low where nothing is known', () => {
    const tool = supplied();
    press(tool, 'V1-1');
    const goal = tool.terminal('TS1', '3');
    tool.pointer('hover', goal.at, goal.subject);
    expect(tool.shown.words?.text).toMatch(/class not known/);
    expect(tool.shown.shapes[0]?.style).toBe('wire.not known');
  });
});

it('numbers on after the highest of the same prefix', () => {
  const numbered = (...numbers: string[]) => ({
    wires: Object.fromEntries(numbers.map((number) => [number, { number } as Wire]))
  });
  expect(nextNumberOf(numbered('1', '12', 'H3', '60b'), '')).toBe('61');
  expect(nextNumberOf(numbered('1', '12', 'H3', 'h7a', 'HV9'), 'H')).toBe('H8');
});
