// Parts moved in the diagram by hand: a drag or a key puts one somewhere, its wires run anew while it
// moves, and it stays there from then on. A plain state machine over the events of the sheet's tools.
import { doMany } from '#document/edits.ts';
import type { Edit, Id } from '#document/index.ts';
import type { Diagram } from '#drawing/diagram.ts';
import type { Subject } from '#drawing/display-list.ts';
import { drawChanges, type Pieces } from '#drawing/draw-pieces.ts';
import { findFreePlace } from '#drawing/layout/free-place.ts';
import type { DiagramPart, Geometry } from '#drawing/layout/geometry.ts';
import {
  handPlacesOf,
  letGoOfPlace,
  moveParts,
  placeInDiagram
} from '#drawing/layout/place-by-hand.ts';
import { laneMm } from '#drawing/router/lanes.ts';
import type { Pick } from '../core/pick.ts';
import {
  emptyPreview,
  type Spot,
  type ToolAction,
  type ToolEvent,
  type ToolPreview
} from '../tools/tool.ts';

export interface DiagramWorld {
  readonly diagram: Diagram;
  readonly pick: Pick | null;
}

/** A part in the hand. */
export interface HeldPart {
  readonly id: Id;
  /** Where in the part it was taken. */
  readonly grip: Spot;
  readonly at: Spot;
  /** The diagram with the part at `at`; null while it has not moved. */
  readonly geometry: Geometry | null;
}

export interface HandStep {
  readonly held: HeldPart | null;
  readonly actions: readonly ToolAction[];
  readonly claims: boolean;
}

const nudges: Readonly<Record<string, Spot>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 }
};
/** Lanes that a key moves a part by. */
const nudgeBy = { plain: 1, shift: 5 } as const;

const partOfSubject = ({ diagram }: DiagramWorld, subject: Subject | null): DiagramPart | null => {
  if (subject?.kind !== 'part' && subject?.kind !== 'terminal') return null;
  const id = subject.kind === 'part' ? subject.id : (subject.id.split('/')[0] ?? '');
  return diagram.geometry.parts.find((part) => part.id === id) ?? null;
};

const nameOf = ({ diagram }: DiagramWorld, id: Id): string =>
  diagram.plan.study.index.partById.get(id)?.reference ?? 'part';

/** The nearest place to a wish where the part lies on no other. */
const freePlace = ({ diagram }: DiagramWorld, part: DiagramPart, wish: Spot): Spot => {
  const others = diagram.geometry.parts.filter(({ id }) => id !== part.id).map(({ box }) => box);
  return findFreePlace({ ...part.box, ...wish }, others, part.box);
};

/** Everything that a hand has placed stays put; so does the part that is placed now. */
const placeEdit = (world: DiagramWorld, id: Id, at: Spot): Edit => {
  const { plan, geometry } = world.diagram;
  const name = `place ${nameOf(world, id)} in the diagram`;
  return doMany(name, [placeInDiagram(plan, geometry, id, at)]);
};

const nothing = (held: HeldPart | null): HandStep => ({ held, actions: [], claims: false });

export const stepHand = (
  held: HeldPart | null,
  event: ToolEvent,
  world: DiagramWorld
): HandStep => {
  switch (event.kind) {
    case 'tap':
      return { held: null, actions: [{ kind: 'press', subject: event.subject }], claims: false };
    case 'grab': {
      const part = partOfSubject(world, event.subject);
      // A finger that wants to move the paper must not move a part that happens to lie under it.
      if (!part || (event.touch && !isPicked(world, part.id))) return nothing(null);
      const { x, y } = part.box;
      const grip = { x: event.at.x - x, y: event.at.y - y };
      return {
        held: { id: part.id, grip, at: { x, y }, geometry: null },
        actions: [],
        claims: true
      };
    }
    case 'drag':
      return { held: held && dragged(held, event.at, world), actions: [], claims: held !== null };
    case 'drop': {
      const last = held && dragged(held, event.at, world);
      if (!last?.geometry) return nothing(null);
      const edit = placeEdit(world, last.id, last.at);
      return { held: null, actions: [{ kind: 'edit', edit }], claims: true };
    }
    case 'give-up':
      return nothing(null);
    case 'key':
      return keyed(held, event, world);
    case 'hover':
    case 'field':
      return nothing(held);
  }
};

const isPicked = ({ pick }: DiagramWorld, id: Id): boolean =>
  pick?.kind === 'part' && pick.id === id;

const dragged = (held: HeldPart, pointer: Spot, world: DiagramWorld): HeldPart => {
  const part = world.diagram.geometry.parts.find(({ id }) => id === held.id);
  if (!part) return held;
  const wish = { x: pointer.x - held.grip.x, y: pointer.y - held.grip.y };
  const at = freePlace(world, part, wish);
  if (at.x === held.at.x && at.y === held.at.y) return held;
  const isHome = at.x === part.box.x && at.y === part.box.y;
  const geometry = isHome ? null : moveParts(world.diagram.geometry, new Map([[held.id, at]]));
  return { ...held, at, geometry };
};

const keyed = (
  held: HeldPart | null,
  { key, shift, ctrl, alt }: Extract<ToolEvent, { kind: 'key' }>,
  world: DiagramWorld
): HandStep => {
  if (key === 'Escape' && held) return { held: null, actions: [], claims: true };
  const way = nudges[key];
  const { pick, diagram } = world;
  if (!way || ctrl || alt || held || pick?.kind !== 'part') return nothing(held);
  const part = diagram.geometry.parts.find(({ id }) => id === pick.id);
  if (!part) return nothing(null);
  const at = nudged(world, part, way, (shift ? nudgeBy.shift : nudgeBy.plain) * laneMm);
  if (!at) return { held: null, actions: [{ kind: 'say', words: 'no room there' }], claims: true };
  const edit = placeEdit(world, part.id, at);
  return { held: null, actions: [{ kind: 'edit', edit, merges: true }], claims: true };
};

/** One step that way; past what is in the way, where it would only be sent back. */
const nudged = (world: DiagramWorld, part: DiagramPart, way: Spot, step: number): Spot | null => {
  const { x, y } = part.box;
  for (let steps = 1; steps <= 40; steps++) {
    const wish = { x: x + way.x * step * steps, y: y + way.y * step * steps };
    const at = freePlace(world, part, wish);
    if ((at.x - x) * way.x + (at.y - y) * way.y > 1e-6) return at;
  }
  return null;
};

/** What the hand shows over the diagram. */
export const showHand = (held: HeldPart | null, { diagram }: DiagramWorld): ToolPreview => {
  if (!held?.geometry) return held ? { ...emptyPreview, cursor: 'grabbing' } : emptyPreview;
  const pieces = drawChanges(diagram, held.geometry);
  return {
    shapes: pieces.items.map(({ shape, style }) => ({ shape, style })),
    hidden: hiddenKeys(diagram, pieces),
    cursor: 'grabbing'
  };
};

const hiddenKeys = ({ plan }: Diagram, { parts, lines }: Pieces): ReadonlySet<string> => {
  const keys = new Set<string>();
  for (const id of parts) {
    keys.add(`part ${id}`);
    for (const { id: terminal } of plan.terminalsOf(id)) keys.add(`terminal ${id}/${terminal}`);
    for (const { component } of plan.links.marks.filter((mark) => mark.part === id)) {
      if (component !== undefined) keys.add(`part ${component}`);
    }
    for (const mark of plan.links.marks.filter((one) => one.part === id)) {
      for (const wire of mark.wires) keys.add(`wire ${wire}`);
    }
  }
  for (const { link } of lines) {
    for (const wire of link.wires) keys.add(`wire ${wire}`);
    if (link.kind !== 'wire') keys.add(`part ${link.from.part}`);
  }
  return keys;
};

/** Gives parts back to the layout, as one step of undo; null where no hand has placed any of them. */
export const letGoEdit = (diagram: Diagram, only: Id | null): Edit | null => {
  const { study } = diagram.plan;
  const placed = [...handPlacesOf(study).keys()].filter((id) => only === null || id === only);
  if (placed.length === 0) return null;
  const name =
    placed.length === 1
      ? `give ${study.index.partById.get(placed[0] ?? '')?.reference ?? 'part'} back to the layout`
      : `give ${placed.length} parts back to the layout`;
  return doMany(name, placed.map(letGoOfPlace));
};
