import { describe, expect, it } from 'vitest';
import { pickAndMove } from '#editor/tools/pick-and-move.ts';
import { chassis } from '../../helpers/chassis.ts';
import { ToolBench } from '../../helpers/tool-bench.ts';

const bench = (face: 'below' | 'above' = 'below') =>
  new ToolBench(
    pickAndMove,
    chassis()
      .unit('Main', { size: [300, 200] })
      .tube('V1', '6CG7', { at: [60, 60] })
      .tube('V2', '6CG7', { at: [140, 60] })
      .strip('TS1', 4, { at: [100, 140] })
      .support('clamp 1', 'clamp', [200, 100])
      .wire('1', 'V1-5', 'V2-4')
      .wire('2', 'V2-5', 'TS1-1')
      .build(),
    face
  );

const part = (tool: ReturnType<typeof bench>, reference: string) => ({
  kind: 'part' as const,
  id: tool.partNamed(reference).id
});
const middle = (tool: ReturnType<typeof bench>, reference: string) => {
  const placed = tool.world.scene.geometry.places.parts.get(tool.partNamed(reference).id);
  return placed?.pose.at ?? { x: 0, y: 0 };
};
const drag = (tool: ReturnType<typeof bench>, reference: string, dx: number, dy: number) => {
  const from = middle(tool, reference);
  return tool.drag(from, { x: from.x + dx, y: from.y + dy }, part(tool, reference), { alt: true });
};

describe('pick and move', () => {
  it('moves a part by one edit, and nothing else of the sheet with it', () => {
    const tool = bench();
    const before = middle(tool, 'V2');
    drag(tool, 'V1', 11.25, -7.5);
    expect(tool.edits).toHaveLength(1);
    expect(tool.partNamed('V1').place).toMatchObject({ x: 71.25, y: 52.5, by: 'hand' });
    expect(middle(tool, 'V2')).toEqual(before);
  });

  it('moves to where the hand is when seen from above', () => {
    const tool = bench('above');
    const before = middle(tool, 'V1');
    drag(tool, 'V1', 10, 5);
    expect(tool.partNamed('V1').place).toMatchObject({ x: 50, y: 65 });
    expect(middle(tool, 'V1').x).toBeCloseTo(before.x + 10, 6);
  });

  it('shows the part and only its own wires in the hand', () => {
    const tool = bench();
    const at = middle(tool, 'V1');
    tool.pointer('grab', at, part(tool, 'V1'));
    tool.pointer('drag', { x: at.x + 20, y: at.y });
    expect(tool.claims || tool.state.held !== null).toBe(true);
    const wires = [...(tool.shown.hidden ?? [])].filter((key) => key.startsWith('wire '));
    expect(wires).toHaveLength(1);
    expect(tool.edits).toHaveLength(0);
    tool.key('Escape').pointer('drop', at);
    expect(tool.edits).toHaveLength(0);
  });

  it('draws a part level with another, unless Alt frees it', () => {
    const tool = bench();
    const from = middle(tool, 'TS1');
    const goal = { x: middle(tool, 'V2').x + 0.9, y: from.y };
    tool.drag(from, goal, part(tool, 'TS1'));
    expect(middle(tool, 'TS1').x).toBeCloseTo(middle(tool, 'V2').x, 6);
  });

  it('does not let a finger move what it has not picked', () => {
    const tool = bench();
    const at = middle(tool, 'V1');
    tool.pointer('grab', at, part(tool, 'V1'), { touch: true });
    expect(tool.claims).toBe(false);
    tool.pointer('tap', at, part(tool, 'V1'), { touch: true });
    tool.pointer('grab', at, part(tool, 'V1'), { touch: true });
    expect(tool.claims).toBe(true);
  });

  it('chooses what lies in a box and moves it together', () => {
    const tool = bench();
    const [a, b] = [middle(tool, 'V1'), middle(tool, 'V2')];
    tool.drag({ x: a.x - 30, y: a.y - 30 }, { x: b.x + 30, y: b.y + 30 }, null, { shift: true });
    expect(tool.state.chosen.size).toBe(2);
    drag(tool, 'V1', 5.5, 3);
    expect(tool.edits).toHaveLength(1);
    expect(tool.partNamed('V1').place).toMatchObject({ x: 65.5, y: 63 });
    expect(tool.partNamed('V2').place).toMatchObject({ x: 145.5, y: 63 });
  });

  it('moves a support', () => {
    const tool = bench();
    const [support] = Object.values(tool.document.supports);
    const at =
      tool.world.scene.geometry.places.supports.get(support?.id ?? '')?.at ?? middle(tool, 'V1');
    const subject = { kind: 'support' as const, id: support?.id ?? '' };
    tool.drag(at, { x: at.x + 4, y: at.y + 9 }, subject, { alt: true });
    expect(Object.values(tool.document.supports)[0]?.place).toMatchObject({ x: 204, y: 109 });
  });

  it('nudges, turns, turns over, doubles and deletes by key', () => {
    const tool = bench();
    tool.pointer('tap', middle(tool, 'V1'), part(tool, 'V1'));
    tool.key('ArrowRight').key('ArrowDown', { shift: true });
    expect(tool.partNamed('V1').place).toMatchObject({ x: 61, y: 70 });
    expect(tool.edits.every(({ merges }) => merges)).toBe(true);
    tool.key('r').key('r').key('R', { shift: true });
    expect(tool.partNamed('V1').place?.rotation).toBe(15);
    tool.key('o');
    expect(tool.partNamed('V1').place?.face).toBe('above');
    tool.key('d');
    expect(Object.keys(tool.partNamed('V3').terminals)).toHaveLength(9);
    expect(Object.keys(tool.partNamed('V3').terminals)).not.toContain(
      Object.keys(tool.partNamed('V1').terminals)[0]
    );
    tool.key('Delete');
    expect(() => tool.partNamed('V3')).toThrow();
    expect(tool.partNamed('V1').reference).toBe('V1');
  });

  it('measures a picked terminal anew', () => {
    const tool = bench();
    const { at, subject } = tool.terminal('V1', '5');
    tool.pointer('tap', at, subject);
    tool.drag(at, { x: at.x + 2.25, y: at.y }, subject, { alt: true });
    expect(tool.terminal('V1', '5').at.x).toBeCloseTo(at.x + 2.25, 2);
    expect(tool.partNamed('V1').place).toMatchObject({ x: 60, y: 60 });
  });

  it('turns by the handle in steps', () => {
    const tool = bench();
    tool.pointer('tap', middle(tool, 'V1'), part(tool, 'V1'));
    const knob = tool.shown.shapes.find(({ style }) => style === 'hand.grip')?.shape;
    const at = knob?.kind === 'circle' ? { x: knob.x, y: knob.y } : { x: 0, y: 0 };
    const { x, y } = middle(tool, 'V1');
    tool.drag(at, { x: x + 40, y: y + 1 }, null);
    expect(tool.partNamed('V1').place?.rotation).toBe(90);
  });
});
