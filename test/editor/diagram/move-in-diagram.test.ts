// The hand in the diagram as a state machine: events in, edits and what is shown out.
import { describe, expect, it } from 'vitest';
import { applyEdit, type Edit } from '#document/index.ts';
import { redressDiagram } from '#drawing/redress-diagram.ts';
import { isFree } from '#drawing/layout/free-place.ts';
import { laneMm } from '#drawing/router/lanes.ts';
import {
  letGoEdit,
  showHand,
  stepHand,
  type DiagramWorld,
  type HeldPart
} from '#editor/diagram/move-in-diagram.ts';
import type { ToolEvent } from '#editor/tools/tool.ts';
import { buildStudy } from '#study/build-study.ts';
import { generateChassis } from '../../helpers/generate-chassis.ts';
import { diagramInRows } from '../../helpers/parts-in-rows.ts';

const document = generateChassis(100, 1);
const diagram = diagramInRows(document);
const world: DiagramWorld = { diagram, pick: null };
const [part] = diagram.geometry.parts;
const { id, box } = part!;

const none = { shift: false, alt: false, ctrl: false };
const pointed = (kind: 'grab' | 'drag' | 'drop' | 'tap', x: number, y: number, touch = false) =>
  ({
    kind,
    at: { x, y },
    reachMm: 1,
    touch,
    subject: { kind: 'part', id },
    ...none
  }) as ToolEvent;
const key = (name: string, shift = false): ToolEvent => ({
  kind: 'key',
  key: name,
  ...none,
  shift
});
const run = (events: readonly ToolEvent[], there = world) => {
  let held: HeldPart | null = null;
  const edits: Edit[] = [];
  const claims: boolean[] = [];
  for (const event of events) {
    const step = stepHand(held, event, there);
    held = step.held;
    claims.push(step.claims);
    for (const action of step.actions) if (action.kind === 'edit') edits.push(action.edit);
  }
  return { held: held as HeldPart | null, edits, claims };
};
const after = (edit: Edit) => {
  const outcome = applyEdit(document, edit);
  if (!outcome.ok) throw new Error(outcome.problem);
  return outcome.document;
};
const grab = pointed('grab', box.x + 5, box.y + 5);
const [awayX, awayY] = [box.x + 5, box.y + 5 - 20 * laneMm];

describe('a drag in the diagram', () => {
  it('places the part, in one step of undo with a name', () => {
    const { edits, claims } = run([
      grab,
      pointed('drag', awayX, awayY),
      pointed('drop', awayX, awayY)
    ]);
    expect(claims).toEqual([true, true, true]);
    expect(edits).toHaveLength(1);
    const outcome = applyEdit(document, edits[0]!);
    expect(outcome.ok && outcome.name).toBe(
      `place ${document.parts[id]!.reference} in the diagram`
    );
    const drawn = redressDiagram(diagram, buildStudy(after(edits[0]!)));
    const put = drawn.geometry.parts.find((one) => one.id === id)!.box;
    expect(put.y).toBeCloseTo(box.y - 20 * laneMm, 6);
    expect(put.x).toBeCloseTo(box.x, 6);
  });

  it('shows the part and its wires where they come to lie, and hides them where they were', () => {
    const { held } = run([grab, pointed('drag', awayX, awayY)]);
    const { shapes, hidden, cursor } = showHand(held, world);
    expect(cursor).toBe('grabbing');
    expect(hidden!.has(`part ${id}`)).toBe(true);
    const own = diagram.geometry.lines.filter(
      ({ link }) => link.from.part === id || link.to.part === id
    );
    expect(own.length).toBeGreaterThan(0);
    for (const { link } of own) {
      for (const wire of link.wires) expect(hidden!.has(`wire ${wire}`)).toBe(true);
    }
    expect(shapes.length).toBeGreaterThan(own.length);
  });

  it('goes round other parts rather than on them', () => {
    const other = diagram.geometry.parts[1]!.box;
    const { held } = run([grab, pointed('drag', other.x + 5, other.y + 5)]);
    const others = diagram.geometry.parts.filter((one) => one.id !== id).map((one) => one.box);
    expect(isFree({ ...box, ...held!.at }, others)).toBe(true);
  });

  it('back to where it was, or given up, changes nothing', () => {
    const away = pointed('drag', awayX, awayY);
    expect(run([grab, away, pointed('drop', box.x + 5, box.y + 5)]).edits).toEqual([]);
    const { edits, held } = run([grab, away, { kind: 'give-up' }, pointed('drop', awayX, awayY)]);
    expect([edits, held]).toEqual([[], null]);
    expect(run([grab, away, key('Escape')]).held).toBeNull();
  });

  it('by a finger moves the paper, unless the part is picked', () => {
    const touched = pointed('grab', box.x + 5, box.y + 5, true);
    expect(run([touched]).claims).toEqual([false]);
    expect(run([touched], { diagram, pick: { kind: 'part', id } }).claims).toEqual([true]);
  });
});

describe('keys', () => {
  const picked: DiagramWorld = { diagram, pick: { kind: 'part', id } };

  it('nudge the picked part by a lane, with Shift by five', () => {
    for (const [shift, lanes] of [
      [false, 1],
      [true, 5]
    ] as const) {
      const { edits, claims } = run([key('ArrowUp', shift)], picked);
      expect(claims).toEqual([true]);
      const { diagramPlace } = after(edits[0]!).parts[id]!;
      expect(diagramPlace!.y).toBeCloseTo(box.y - lanes * laneMm, 6);
      expect(diagramPlace!.by).toBe('hand');
    }
  });

  it('are the paper’s own where no part is picked', () => {
    expect(run([key('ArrowUp')]).claims).toEqual([false]);
    expect(run([key('a')], picked).claims).toEqual([false]);
  });
});

describe('places', () => {
  it('are given back, one or all, and only where there are any', () => {
    expect(letGoEdit(diagram, null)).toBeNull();
    const { edits } = run([key('ArrowUp')], { diagram, pick: { kind: 'part', id } });
    const placed = after(edits[0]!);
    const moved = redressDiagram(diagram, buildStudy(placed));
    expect(letGoEdit(moved, diagram.geometry.parts[1]!.id)).toBeNull();
    const outcome = applyEdit(placed, letGoEdit(moved, id)!);
    expect(outcome.ok && outcome.document.parts[id]!.diagramPlace).toBeUndefined();
    expect(letGoEdit(moved, null)).toEqual(letGoEdit(moved, id));
  });
});
