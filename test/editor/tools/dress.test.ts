import { describe, expect, it } from 'vitest';
import { dressWires } from '#editor/tools/dress/dress-wires.ts';
import { placeSupports } from '#editor/tools/dress/place-supports.ts';
import { pickAndMove } from '#editor/tools/pick-and-move.ts';
import type { Tool } from '#editor/tools/tool.ts';
import { chassis } from '../../helpers/chassis.ts';
import { ToolBench } from '../../helpers/tool-bench.ts';

const bench = <S>(tool: Tool<S>) =>
  new ToolBench(
    tool,
    chassis()
      .unit('Main', { size: [300, 200] })
      .strip('TS1', 4, { at: [40, 40] })
      .strip('TS2', 4, { at: [240, 40] })
      .support('clamp 1', 'clamp', [100, 90])
      .support('clamp 2', 'clamp', [180, 90])
      .wire('1', 'TS1-1', 'TS2-1')
      .wire('2', 'TS2-2', 'TS1-2')
      .wire('3', 'TS1-3', 'TS2-3', { route: ['clamp 1'] })
      .build()
  );

const wireNamed = <S>(tool: ToolBench<S>, number: string) => {
  const wire = Object.values(tool.document.wires).find((one) => one.number === number);
  if (!wire) throw new Error(`no wire ${number}`);
  return wire;
};
const subject = <S>(tool: ToolBench<S>, number: string) => ({
  kind: 'wire' as const,
  id: wireNamed(tool, number).id
});
const routeOf = <S>(tool: ToolBench<S>, number: string) =>
  wireNamed(tool, number).route?.supports.map((id) => tool.document.supports[id]?.name);
const supportSpot = <S>(tool: ToolBench<S>, name: string) => {
  const places = [...tool.world.scene.geometry.places.supports.values()];
  const found = places.find(({ support }) => support.name === name);
  if (!found) throw new Error(`no support ${name}`);
  return found.at;
};

describe('supports', () => {
  it('are placed by a press, named on, with their bore', () => {
    const tool = bench(placeSupports);
    tool.field('bore', '3/8 in').pointer('tap', { x: 150, y: 150 }, null, { alt: true });
    tool.field('bore', '').field('kind', 'grommet').pointer('tap', { x: 20, y: 150 });
    const made = Object.values(tool.document.supports).slice(2);
    expect(made.map(({ name, kind }) => [name, kind])).toEqual([
      ['clamp 3', 'clamp'],
      ['grommet 1', 'grommet']
    ]);
    expect(made[0]).toMatchObject({ place: { x: 150, y: 150 }, boreMm: 9.53 });
    expect(made[1]?.boreMm).toBeUndefined();
  });

  it('are not placed with a bore that cannot be read', () => {
    const tool = bench(placeSupports);
    tool.field('bore', 'wide').pointer('tap', { x: 150, y: 150 });
    expect(Object.keys(tool.document.supports)).toHaveLength(2);
    expect(tool.said.at(-1)).toMatch(/\w/);
  });
});

describe('a wire that is dragged', () => {
  it('goes through the support that it is let go on', () => {
    const tool = bench(pickAndMove);
    tool.drag({ x: 140, y: 40 }, supportSpot(tool, 'clamp 2'), subject(tool, '1'));
    tool.drag({ x: 100, y: 50 }, supportSpot(tool, 'clamp 1'), subject(tool, '1'));
    expect(routeOf(tool, '1')).toEqual(['clamp 1', 'clamp 2']);
    expect(wireNamed(tool, '1').route?.by).toBe('hand');
    expect(tool.edits).toHaveLength(2);
  });

  it('comes off the support that it is dragged away from', () => {
    const tool = bench(pickAndMove);
    const at = supportSpot(tool, 'clamp 1');
    tool.drag({ x: at.x + 3, y: at.y - 3 }, { x: at.x, y: at.y - 40 }, subject(tool, '3'));
    expect(wireNamed(tool, '3').route).toBeUndefined();
  });

  it('stays as it was when it is let go anywhere else', () => {
    const tool = bench(pickAndMove);
    tool.drag({ x: 140, y: 40 }, { x: 140, y: 170 }, subject(tool, '1'));
    expect(tool.edits).toHaveLength(0);
    expect(tool.said.at(-1)).toMatch(/stays/);
  });
});

describe('many wires at once', () => {
  it('go through the supports, each from its own end', () => {
    const tool = bench(dressWires);
    for (const number of ['1', '2']) tool.pointer('tap', { x: 0, y: 0 }, subject(tool, number));
    for (const name of ['clamp 1', 'clamp 2']) tool.pointer('tap', supportSpot(tool, name));
    tool.key('Enter');
    expect(routeOf(tool, '1')).toEqual(['clamp 1', 'clamp 2']);
    expect(routeOf(tool, '2')).toEqual(['clamp 2', 'clamp 1']);
    expect(tool.edits).toHaveLength(1);
    tool.field('free');
    expect(routeOf(tool, '1')).toBeUndefined();
  });

  it('are chosen by their part, or by a box', () => {
    const tool = bench(dressWires);
    tool.pointer('tap', { x: 0, y: 0 }, { kind: 'part', id: tool.partNamed('TS1').id });
    expect(tool.state.wires.size).toBe(3);
    tool.field('none');
    tool.drag({ x: 0, y: 0 }, { x: 300, y: 200 }, null, { shift: true });
    expect(tool.state.wires.size).toBe(3);
  });

  it('get a cable and a length outside', () => {
    const tool = bench(dressWires);
    tool.pointer('tap', { x: 0, y: 0 }, { kind: 'part', id: tool.partNamed('TS1').id });
    tool.field('cable', 'yoke cable').field('outside', '12 in');
    const [cable] = Object.values(tool.document.cables);
    expect(cable).toMatchObject({ name: 'yoke cable', conductors: 3 });
    for (const number of ['1', '2', '3']) {
      expect(wireNamed(tool, number)).toMatchObject({ cable: cable?.id, outsideMm: 304.8 });
    }
    tool.field('cable', '').field('outside', '');
    expect(wireNamed(tool, '1').cable).toBeUndefined();
    expect(wireNamed(tool, '1').outsideMm).toBeUndefined();
  });

  it('get a note on how they lie, and critical marks that automatic routing heeds', () => {
    const tool = bench(dressWires);
    tool.pointer('tap', { x: 0, y: 0 }, subject(tool, '1'));
    tool.pointer('tap', { x: 0, y: 0 }, subject(tool, '2'));
    tool.field('lies', 'along the apron').field('keepShort', 'on');
    for (const number of ['1', '2']) {
      expect(wireNamed(tool, number)).toMatchObject({
        dress: 'along the apron',
        critical: { keepShort: true }
      });
    }
    expect(wireNamed(tool, '3').critical).toBeUndefined();
    expect(tool.edits).toHaveLength(2);
    const before = tool.edits.length;
    tool.field('route');
    expect(tool.edits).toHaveLength(before);
    expect(tool.said.at(-1)).toBe('no route would change; 2 wires left as they are');
    tool.field('keepPlace', 'on').field('keepShort', 'off').field('keepPlace', 'off');
    expect(wireNamed(tool, '1').critical).toBeUndefined();
    tool.field('lies', '');
    expect(wireNamed(tool, '1').dress).toBeUndefined();
  });

  it('are routed by themselves by one edit that says what it left', () => {
    const tool = bench(dressWires);
    tool.field('route');
    expect(tool.edits).toHaveLength(1);
    expect(tool.edits[0]?.words).toBe('2 wires routed; 1 wire left as they are');
    expect(routeOf(tool, '3')).toEqual(['clamp 1']);
  });
});
