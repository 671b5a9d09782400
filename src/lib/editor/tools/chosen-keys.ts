// What keys do with what is chosen: nudge, turn, other face, take away, put another beside it.
import { changeElement, doMany, removeElement } from '#document/edits.ts';
import type { Edit } from '#document/index.ts';
import { holdHomes, placeEdit, type Body } from './bodies.ts';
import { duplicateEdit } from './duplicate.ts';
import { asTurn, turnStep } from './turn-grip.ts';
import type { Spot, ToolAction, ToolEvent, ToolWorld } from './tool.ts';

export interface KeyAnswer {
  readonly actions: readonly ToolAction[];
  readonly chosen?: ReadonlySet<string>;
}

/** A nudge, mm. */
const nudgeMm = { plain: 1, shift: 10 } as const;

const ways: Readonly<Record<string, Spot>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 }
};

const namesOf = (bodies: readonly Body[]): string =>
  bodies.length === 1 ? (bodies[0]?.name ?? '') : `${bodies.length} things`;

const placeAll = (
  { scene }: ToolWorld,
  bodies: readonly Body[],
  verb: string,
  placeOf: (body: Body) => { readonly at: Spot; readonly rotation: number }
): ToolAction => {
  const edits = bodies.flatMap((body) => {
    const { at, rotation } = placeOf(body);
    return placeEdit(scene, body, at, rotation) ?? [];
  });
  const edit = doMany(`${verb} ${namesOf(bodies)}`, [...holdHomes(scene), ...edits]);
  return { kind: 'edit', edit, merges: true };
};

const turned = (bodies: readonly Body[], world: ToolWorld, by: number): KeyAnswer | null => {
  const parts = bodies.filter(({ placed }) => placed !== null);
  if (parts.length === 0) return null;
  const placeOf = ({ at, rotation }: Body) => ({ at, rotation: asTurn(rotation + by) });
  return { actions: [placeAll(world, parts, 'turn', placeOf)] };
};

const otherFace = (bodies: readonly Body[]): KeyAnswer | null => {
  const edits = bodies.flatMap(({ placed }): Edit[] => {
    const place = placed?.part.place;
    if (!placed || !place) return [];
    const face = place.face === 'above' ? 'below' : 'above';
    return [changeElement('part', placed.part.id, { place: { face } })];
  });
  if (edits.length === 0) return null;
  const edit = doMany(`move ${namesOf(bodies)} to the other face`, edits);
  return { actions: [{ kind: 'edit', edit }] };
};

const removed = (bodies: readonly Body[]): KeyAnswer => {
  const edits = bodies.map(({ subject }) =>
    removeElement(subject.kind === 'support' ? 'support' : 'part', subject.id)
  );
  const name = `delete ${namesOf(bodies)}`;
  const words = `${namesOf(bodies)} deleted; undo brings it back`;
  return { actions: [{ kind: 'edit', edit: doMany(name, edits), words }], chosen: new Set() };
};

/** What a key does with the bodies that are chosen, or null where it does nothing with them. */
export const chosenKeys = (
  { key, shift, ctrl }: Extract<ToolEvent, { kind: 'key' }>,
  bodies: readonly Body[],
  world: ToolWorld
): KeyAnswer | null => {
  if (bodies.length === 0) return null;
  const way = ways[key];
  if (way && !ctrl) {
    const step = shift ? nudgeMm.shift : nudgeMm.plain;
    const placeOf = ({ at, rotation }: Body) => ({
      at: { x: at.x + way.x * step, y: at.y + way.y * step },
      rotation
    });
    return { actions: [placeAll(world, bodies, 'move', placeOf)] };
  }
  const letter = key.toLowerCase();
  if (letter === 'd') {
    const { edit, chosen } = duplicateEdit(bodies, world);
    return { actions: [{ kind: 'edit', edit }], chosen };
  }
  if (ctrl) return null;
  if (letter === 'r') return turned(bodies, world, shift ? -turnStep : turnStep);
  if (letter === 'o') return otherFace(bodies);
  if (key === 'Delete' || key === 'Backspace') return removed(bodies);
  return null;
};
