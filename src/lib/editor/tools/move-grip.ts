// Takes up parts and supports: one, or all that are chosen together. The one that was pressed is drawn
// to the others' lines; the rest go along with it.
import { doMany } from '#document/edits.ts';
import type { Subject } from '#drawing/display-list.ts';
import { bodyOf, drawBodyAt, holdHomes, placeEdit, terminalsAt, type Body } from './bodies.ts';
import type { Grip, Held } from './grip.ts';
import { looseLines } from './loose-lines.ts';
import { gridMm, snap, type Snapped } from './snapping.ts';
import {
  subjectKey,
  type Spot,
  type ToolAction,
  type ToolPreview,
  type ToolWorld
} from './tool.ts';

/** So near to a line of other parts a part is drawn to it, px. */
const drawPx = 7;

const keysOf = ({ subject, placed, hanging }: Body): string[] => {
  const part = placed?.part ?? hanging?.part;
  const terminals = Object.keys(part?.terminals ?? {});
  return [subjectKey(subject), ...terminals.map((id) => `terminal ${subject.id}/${id}`)];
};

/** A subject as its key, back. */
const subjectOf = (key: string): Subject => {
  const [kind = '', id = ''] = key.split(' ');
  return { kind: kind as Subject['kind'], id };
};

/** The bodies of what is chosen. */
export const bodiesOf = (world: ToolWorld, chosen: Iterable<string>): readonly Body[] =>
  [...chosen].flatMap((key) => bodyOf(world, subjectOf(key)) ?? []);

const middlesBut = ({ scene }: ToolWorld, bodies: readonly Body[]): readonly Spot[] => {
  const held = new Set(bodies.map(({ subject }) => subject.id));
  const { parts, supports } = scene.geometry.places;
  return [
    ...[...parts.values()].flatMap(({ part, pose, inTray }) =>
      held.has(part.id) || inTray ? [] : [pose.at]
    ),
    ...[...supports.values()].flatMap(({ support, at }) => (held.has(support.id) ? [] : [at]))
  ];
};

const plus = (a: Spot, b: Spot): Spot => ({ x: a.x + b.x, y: a.y + b.y });
const minus = (a: Spot, b: Spot): Spot => ({ x: a.x - b.x, y: a.y - b.y });

/** What the hand shows of bodies that are moved and turned, and what the sheet then leaves out. */
export const showBodies = (
  world: ToolWorld,
  bodies: readonly Body[],
  placeOf: (body: Body) => { readonly at: Spot; readonly rotation: number }
): ToolPreview & { readonly hidden: ReadonlySet<string> } => {
  const moved = new Map<string, Spot>();
  for (const body of bodies) {
    const { at, rotation } = placeOf(body);
    for (const [key, spot] of terminalsAt(body, at, rotation)) moved.set(key, spot);
  }
  const lines = looseLines(world, moved);
  const shapes = bodies.flatMap((body) => {
    const { at, rotation } = placeOf(body);
    return drawBodyAt(body, at, rotation);
  });
  return {
    shapes: [...lines.shapes, ...shapes],
    hidden: new Set([...bodies.flatMap(keysOf), ...lines.hidden])
  };
};

/** The edit that puts all of them down, as one step of undo; nothing where none has a unit. */
export const placeBodies = (
  { scene }: ToolWorld,
  bodies: readonly Body[],
  placeOf: (body: Body) => { readonly at: Spot; readonly rotation: number },
  verb = 'move'
): readonly ToolAction[] => {
  const edits = bodies.flatMap((body) => {
    const { at, rotation } = placeOf(body);
    return placeEdit(scene, body, at, rotation) ?? [];
  });
  if (edits.length === 0) {
    return [{ kind: 'say', words: 'there is no unit to put it in' }];
  }
  const [first] = bodies;
  const name =
    bodies.length === 1 ? `${verb} ${first?.name ?? ''}` : `${verb} ${bodies.length} things`;
  return [{ kind: 'edit', edit: doMany(name, [...holdHomes(scene), ...edits]) }];
};

const hold = (bodies: readonly Body[], anchor: Body, from: Spot, now: Snapped): Held => {
  const shift = minus(now.at, anchor.at);
  const placeOf = ({ at, rotation }: Body) => ({ at: plus(at, shift), rotation });
  return {
    drag: (event, world) => {
      const rest = snap(plus(anchor.at, minus(event.at, from)), {
        others: middlesBut(world, bodies),
        reachMm: drawPx / world.pxPerMm,
        gridMm: gridMm(world.lengthUnit),
        origin: anchor.home?.corner ?? { x: 0, y: 0 },
        free: event.alt
      });
      return hold(bodies, anchor, from, rest);
    },
    show: (world) => {
      const { shapes, hidden } = showBodies(world, bodies, placeOf);
      return { shapes: [...now.guides, ...shapes], hidden, cursor: 'grabbing' };
    },
    drop: (world) => (shift.x === 0 && shift.y === 0 ? [] : placeBodies(world, bodies, placeOf))
  };
};

export const moveGrip: Grip = {
  take: ({ subject, at, touch }, world, chosen) => {
    if (subject === null) return null;
    const anchor = bodyOf(world, subject);
    if (anchor === null) return null;
    const isChosen = chosen.has(subjectKey(anchor.subject));
    // A finger that wants to move the paper must not move a part that happens to lie under it.
    if (touch && !isChosen) return null;
    const bodies = isChosen ? bodiesOf(world, chosen) : [anchor];
    return hold(bodies, anchor, at, { at: anchor.at, guides: [] });
  }
};
