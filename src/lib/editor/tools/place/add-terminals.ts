// Gives a part terminals where they are seen, on the photo or on the part: press the part, then press each
// place; what is typed next is the name of the last one.
import { changeElement } from '#document/edits.ts';
import { orderAtEnd, type Edit, type Part, type Point, type Terminal } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import type { PlacedPart } from '#drawing/pictorial/placed-part.ts';
import { turnedBy } from '#drawing/pictorial/vectors.ts';
import type { PanelField } from '../panel.ts';
import { boxOfPart } from '../scene.ts';
import type {
  PreviewShape,
  Spot,
  Tool,
  ToolEvent,
  ToolPreview,
  ToolStep,
  ToolWorld
} from '../tool.ts';

export interface TerminalsState {
  readonly part: string | null;
  /** The terminal that is being named. */
  readonly named: string | null;
  /** Nothing was typed yet: the first letter takes the place of the name that was proposed. */
  readonly isFresh: boolean;
}

const resting: TerminalsState = { part: null, named: null, isFresh: true };

const say = (state: TerminalsState, words: string): ToolStep<TerminalsState> => ({
  state,
  actions: [{ kind: 'say', words }],
  claims: true
});

/** A place on the sheet as an offset from the part's middle, before the part is turned. */
export const toOffset = ({ pose }: PlacedPart, at: Spot): Point => {
  const [dx, dy] = [at.x - pose.at.x, at.y - pose.at.y];
  const { x, y } = turnedBy({ x: pose.mirrored ? -dx : dx, y: dy }, -pose.rotation);
  return { x: Math.round(x * 100) / 100, y: Math.round(y * 100) / 100 };
};

const partOf = (state: TerminalsState, { study, pick }: ToolWorld): Part | null => {
  const id = state.part ?? (pick?.kind === 'part' ? pick.id : null);
  return (id === null ? undefined : study.index.partById.get(id)) ?? null;
};

/** "6" after "5"; the first number that is free. */
const nextName = ({ terminals }: Part): string => {
  const names = new Set(Object.values(terminals).map(({ name }) => name));
  let number = names.size + 1;
  while (names.has(String(number))) number += 1;
  return String(number);
};

const choose = (id: string, { study }: ToolWorld): ToolStep<TerminalsState> => {
  const reference = study.index.partById.get(id)?.reference ?? '';
  return say({ ...resting, part: id }, `${reference}: press where its terminals are`);
};

const add = (
  state: TerminalsState,
  world: ToolWorld,
  part: Part,
  at: Spot
): ToolStep<TerminalsState> => {
  const placed = world.scene.geometry.places.parts.get(part.id);
  if (!placed || placed.inTray) {
    return say(
      { ...state, part: part.id },
      `${part.reference} has no place yet: move it to one first`
    );
  }
  const id = world.makeId('terminal');
  const last = sortByOrder(part.terminals).at(-1);
  const terminal: Terminal = {
    id,
    order: orderAtEnd(part.terminals),
    name: nextName(part),
    offset: toOffset(placed, at),
    ...(last?.ending === undefined ? {} : { ending: last.ending })
  };
  // Whatever stood at its usual place stays there: one more would move all of them.
  const held = Object.fromEntries(
    placed.terminals.flatMap((one) => {
      const offset = placed.offsets.get(one.id);
      if (one.offset || one.on || !offset) return [];
      return [[one.id, { offset: { x: offset.x, y: offset.y } }]];
    })
  );
  const fields = { terminals: { ...held, [id]: terminal } };
  const edit: Edit = { kind: 'change-part', args: { id: part.id, fields } };
  const words = `${part.reference} ${terminal.name} added; type its name`;
  return {
    state: { part: part.id, named: id, isFresh: true },
    actions: [{ kind: 'edit', edit, words }],
    claims: true
  };
};

const tap = (
  state: TerminalsState,
  { subject, at }: Extract<ToolEvent, { kind: 'tap' }>,
  world: ToolWorld
): ToolStep<TerminalsState> => {
  const part = partOf(state, world);
  const [id = '', terminal] = subject?.id.split('/') ?? [];
  if (subject?.kind === 'terminal' && terminal !== undefined) {
    const name = world.study.index.terminalByKey.get(subject.id)?.terminal.name ?? '';
    return say({ part: id, named: terminal, isFresh: true }, `${name}: type another name`);
  }
  const isOther = subject?.kind === 'part' && id !== part?.id;
  if (isOther) return choose(id, world);
  if (!part) return say(state, 'press a part first');
  return add(state, world, part, at);
};

const rename = (
  state: TerminalsState,
  world: ToolWorld,
  name: string
): ToolStep<TerminalsState> => {
  const part = partOf(state, world);
  if (!part || state.named === null || !part.terminals[state.named]) return { state, actions: [] };
  const terminals = { [state.named]: { name } };
  const edit = changeElement('part', part.id, { terminals });
  return {
    state: { ...state, isFresh: false },
    actions: [{ kind: 'edit', edit, merges: true, words: `${part.reference} ${name}` }],
    claims: true
  };
};

const nameOf = (state: TerminalsState, world: ToolWorld): string =>
  (state.named === null ? undefined : partOf(state, world)?.terminals[state.named]?.name) ?? '';

const pressKey = (
  state: TerminalsState,
  { key, ctrl, alt }: Extract<ToolEvent, { kind: 'key' }>,
  world: ToolWorld
): ToolStep<TerminalsState> => {
  if (ctrl || alt) return { state, actions: [] };
  if (key === 'Escape' || key === 'Enter') {
    if (state.named !== null) return say({ ...state, named: null, isFresh: true }, 'named');
    return key === 'Escape' && state.part !== null ? say(resting, 'done') : { state, actions: [] };
  }
  if (state.named === null) return { state, actions: [] };
  const name = nameOf(state, world);
  if (key === 'Backspace') return rename(state, world, name.slice(0, -1));
  if (key.length !== 1) return { state, actions: [] };
  return rename(state, world, state.isFresh ? key : name + key);
};

const step = (
  state: TerminalsState,
  event: ToolEvent,
  world: ToolWorld
): ToolStep<TerminalsState> => {
  switch (event.kind) {
    case 'tap':
      return tap(state, event, world);
    case 'key':
      return pressKey(state, event, world);
    case 'field':
      if (event.id === 'name') return rename(state, world, event.value);
      return event.id === 'done' ? say(resting, 'done') : { state, actions: [] };
    default:
      return { state, actions: [] };
  }
};

const panel = (state: TerminalsState, world: ToolWorld): readonly PanelField[] => {
  const part = partOf(state, world);
  if (!part) return [{ kind: 'words', id: 'says', text: 'Press the part that gets terminals.' }];
  const count = Object.keys(part.terminals).length;
  const text = `${part.reference} has ${count}. Press where the next one is, or one of them to name it anew.`;
  return [
    { kind: 'words', id: 'says', text },
    ...(state.named === null
      ? []
      : ([
          {
            kind: 'text',
            id: 'name',
            label: 'Name of the terminal',
            value: nameOf(state, world),
            example: 'red',
            wide: true
          }
        ] as const)),
    { kind: 'action', id: 'done', label: 'Done', key: 'Esc' }
  ];
};

const show = (state: TerminalsState, world: ToolWorld): ToolPreview => {
  const part = partOf(state, world);
  const placed = part && world.scene.geometry.places.parts.get(part.id);
  if (!placed) return { shapes: [], cursor: 'crosshair' };
  const gap = 2;
  const { x, y, width, height } = boxOfPart(placed);
  const frame: PreviewShape = {
    shape: {
      kind: 'box',
      x: x - gap,
      y: y - gap,
      width: width + 2 * gap,
      height: height + 2 * gap,
      round: 1.5
    },
    style: 'hand.box'
  };
  const at = state.named === null ? undefined : placed.spots.get(state.named);
  const ring: PreviewShape[] = at
    ? [{ shape: { kind: 'circle', x: at.x, y: at.y, r: 2.6 }, style: 'hand.ring' }]
    : [];
  const words = at ? { words: { text: nameOf(state, world), at } } : {};
  return { shapes: [frame, ...ring], cursor: 'crosshair', ...words };
};

export const addTerminals: Tool<TerminalsState> = {
  id: 'terminals',
  name: 'Terminals',
  key: 't',
  hint: 'Press a part, then press where its terminals are; type the name of each.',
  icon: 'M10 4.5a3 3 0 1 0 .01 0zM10 10.5V17M6.5 13.7h7',
  readsLetters: true,
  resting,
  step,
  panel,
  show
};
