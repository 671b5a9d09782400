import { describe, expect, it } from 'vitest';
import { addTerminals } from '#editor/tools/place/add-terminals.ts';
import { pickAndMove } from '#editor/tools/pick-and-move.ts';
import { placeParts } from '#editor/tools/place/place-parts.ts';
import { chassis } from '../../helpers/chassis.ts';
import { ToolBench } from '../../helpers/tool-bench.ts';

const built = () =>
  chassis()
    .unit('Main', { size: [300, 200] })
    .part('transformer', 'T1', ['1', '2'], { at: [100, 100], rotation: 90 })
    .tube('V1', '6CG7', { at: [200, 100] })
    .build();

const partSubject = <S>(tool: ToolBench<S>, reference: string) => ({
  kind: 'part' as const,
  id: tool.partNamed(reference).id
});

describe('terminals that are seen', () => {
  it.each(['below', 'above'] as const)('are added where they are pressed, from %s', (face) => {
    const tool = new ToolBench(addTerminals, built(), face);
    const side = face === 'above' ? -1 : 1;
    const subject = partSubject(tool, 'T1');
    tool.pointer('tap', { x: 100 * side, y: 100 }, subject);
    expect(tool.edits).toHaveLength(0);
    const before = tool.terminal('T1', '1').at;
    tool.pointer('tap', { x: 120 * side, y: 104 }, subject);
    expect(tool.terminal('T1', '3').at.x).toBeCloseTo(120 * side, 1);
    expect(tool.terminal('T1', '3').at.y).toBeCloseTo(104, 1);
    expect(tool.terminal('T1', '1').at).toEqual(before);
  });

  it('are named on the spot, by keys or in the field', () => {
    const tool = new ToolBench(addTerminals, built());
    const subject = partSubject(tool, 'T1');
    tool.pointer('tap', { x: 100, y: 100 }, subject).pointer('tap', { x: 120, y: 104 }, subject);
    for (const key of 'red') expect(tool.key(key).claims).toBe(true);
    tool.key('Enter').pointer('tap', { x: 80, y: 104 }).field('name', 'blue');
    const names = Object.values(tool.partNamed('T1').terminals).map(({ name }) => name);
    expect(names).toEqual(['1', '2', 'red', 'blue']);
  });

  it('go to the part that was pressed last', () => {
    const tool = new ToolBench(addTerminals, built());
    tool.pointer('tap', { x: 100, y: 100 }, partSubject(tool, 'T1'));
    tool.pointer('tap', { x: 200, y: 100 }, partSubject(tool, 'V1'));
    tool.pointer('tap', { x: 200, y: 130 });
    expect(Object.keys(tool.partNamed('V1').terminals)).toHaveLength(10);
    tool.key('Escape').key('Escape').pointer('tap', { x: 20, y: 20 });
    expect(tool.said.at(-1)).toBe('press a part first');
  });
});

it('a part that is kept as a pattern is placed again, joined to nothing', () => {
  const picked = new ToolBench(pickAndMove, built());
  picked.pointer('tap', { x: 100, y: 100 }, partSubject(picked, 'T1')).field('pattern');
  const [pattern] = Object.values(picked.document.patterns);
  const tool = new ToolBench(placeParts, picked.document);
  tool.field('what', pattern?.name ?? '', false).pointer('tap', { x: 50, y: 150 });
  const [first, again] = [tool.partNamed('T1'), tool.partNamed('T2')];
  expect(again.kind).toBe('transformer');
  const offsetsOf = (part: typeof first) =>
    Object.values(part.terminals).map(({ name, offset }) => [name, offset?.x ?? null]);
  expect(offsetsOf(again).map(([name]) => name)).toEqual(offsetsOf(first).map(([name]) => name));
  const shared = Object.keys(again.terminals).filter((id) => id in first.terminals);
  expect(shared).toEqual([]);
});
