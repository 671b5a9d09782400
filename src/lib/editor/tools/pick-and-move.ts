// The tool that is there when no other is: a press picks, a drag moves what it pressed, a drag with
// Shift over the paper chooses all that lies in a box. What is chosen is moved, turned and taken away
// together.
import type { Subject } from '#drawing/display-list.ts';
import { chosenKeys } from './chosen-keys.ts';
import { photoGrip } from '../photos/photo-grip.ts';
import { wireGrip } from './dress/wire-grip.ts';
import type { Grip, Held } from './grip.ts';
import { keepPatternEdit } from './keep-pattern.ts';
import { bodiesOf, moveGrip } from './move-grip.ts';
import type { PanelField } from './panel.ts';
import { boxOfPart } from './scene.ts';
import {
  subjectKey,
  type PreviewShape,
  type Spot,
  type Tool,
  type ToolEvent,
  type ToolStep,
  type ToolWorld
} from './tool.ts';
import { terminalGrip } from './terminal-grip.ts';
import { turnGrip, turnHandle } from './turn-grip.ts';

export interface PickState {
  /** Keys of parts and supports that are chosen together. */
  readonly chosen: ReadonlySet<string>;
  readonly held: Held | null;
  readonly box: { readonly from: Spot; readonly to: Spot } | null;
}

const resting: PickState = { chosen: new Set(), held: null, box: null };

/** In this order they are asked whether they take a drag. */
export const grips: readonly Grip[] = [turnGrip, terminalGrip, moveGrip, wireGrip, photoGrip];

/** What a press chooses: of a terminal its part, of a wire nothing that could be moved. */
const choiceOf = (subject: Subject | null): readonly string[] => {
  if (subject?.kind === 'terminal') return [`part ${subject.id.split('/')[0] ?? ''}`];
  return subject?.kind === 'part' || subject?.kind === 'support' ? [subjectKey(subject)] : [];
};

const inBox = ({ scene }: ToolWorld, from: Spot, to: Spot): readonly string[] => {
  const [left, right] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
  const [top, bottom] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
  const holds = ({ x, y }: Spot): boolean => x >= left && x <= right && y >= top && y <= bottom;
  const { parts, supports } = scene.geometry.places;
  return [
    ...[...parts.values()].flatMap((placed) => {
      const { x, y, width, height } = boxOfPart(placed);
      const isIn = holds({ x: x + width / 2, y: y + height / 2 });
      return isIn ? [`part ${placed.part.id}`] : [];
    }),
    ...[...supports.values()].flatMap(({ support, at }) =>
      holds(at) ? [`support ${support.id}`] : []
    )
  ];
};

const toggled = (chosen: ReadonlySet<string>, keys: readonly string[]): ReadonlySet<string> => {
  const next = new Set(chosen);
  for (const key of keys) if (!next.delete(key)) next.add(key);
  return next;
};

const step = (state: PickState, event: ToolEvent, world: ToolWorld): ToolStep<PickState> => {
  const rest = { state, actions: [] };
  switch (event.kind) {
    case 'tap': {
      const keys = choiceOf(event.subject);
      if (event.shift && keys.length > 0) {
        const chosen = toggled(state.chosen, keys);
        const words = `${chosen.size} chosen`;
        return { state: { ...resting, chosen }, actions: [{ kind: 'say', words }] };
      }
      const press = { kind: 'press', subject: event.subject } as const;
      return { state: { ...resting, chosen: new Set(keys) }, actions: [press] };
    }
    case 'grab': {
      const chosen = pickedToo(state.chosen, world);
      for (const grip of grips) {
        const held = grip.take(event, world, chosen);
        if (held) return { state: { ...state, held, box: null }, actions: [], claims: true };
      }
      if (!event.shift) return rest;
      return {
        state: { ...state, box: { from: event.at, to: event.at } },
        actions: [],
        claims: true
      };
    }
    case 'drag':
      if (state.held)
        return { state: { ...state, held: state.held.drag(event, world) }, actions: [] };
      if (state.box)
        return { state: { ...state, box: { ...state.box, to: event.at } }, actions: [] };
      return rest;
    case 'drop': {
      if (state.held) {
        const actions = state.held.drag(event, world).drop(world);
        return { state: { ...state, held: null }, actions };
      }
      if (!state.box) return rest;
      const chosen = new Set(inBox(world, state.box.from, event.at));
      const words = chosen.size === 0 ? 'nothing in the box' : `${chosen.size} chosen`;
      return { state: { ...resting, chosen }, actions: [{ kind: 'say', words }] };
    }
    case 'give-up':
      return { state: { ...state, held: null, box: null }, actions: [] };
    case 'key':
      return chosenKey(state, event, world);
    case 'field':
      return pressButton(state, event.id, world);
    case 'hover':
      return rest;
  }
};

/** What is picked elsewhere, in the schedule for one, can be moved as well. */
const pickedToo = (chosen: ReadonlySet<string>, { pick }: ToolWorld): ReadonlySet<string> =>
  chosen.size > 0 || pick?.kind !== 'part' ? chosen : new Set([`part ${pick.id}`]);

const chosenKey = (
  state: PickState,
  event: Extract<ToolEvent, { kind: 'key' }>,
  world: ToolWorld
): ToolStep<PickState> => {
  if (event.key === 'Escape') {
    const isHolding = state.held !== null || state.box !== null || state.chosen.size > 1;
    return isHolding
      ? { state: resting, actions: [], claims: true }
      : { state: resting, actions: [] };
  }
  const bodies = bodiesOf(world, pickedToo(state.chosen, world));
  const answer = chosenKeys(event, bodies, world);
  if (answer === null) return { state, actions: [] };
  const chosen = answer.chosen ?? state.chosen;
  return { state: { ...state, chosen }, actions: answer.actions, claims: true };
};

/** The buttons of the panel, and the key that each of them presses. */
const buttons = [
  { id: 'turn', label: 'Turn', key: 'R' },
  { id: 'over', label: 'Other face', key: 'O' },
  { id: 'double', label: 'Another', key: 'D' },
  { id: 'delete', label: 'Delete', key: 'Delete' }
] as const;

const pressButton = (state: PickState, id: string, world: ToolWorld): ToolStep<PickState> => {
  const button = buttons.find((one) => one.id === id);
  const plain = { shift: false, alt: false, ctrl: false };
  if (button) {
    const key = button.key.length === 1 ? button.key.toLowerCase() : button.key;
    return chosenKey(state, { kind: 'key', key, ...plain }, world);
  }
  const [body] = bodiesOf(world, pickedToo(state.chosen, world));
  const part = body?.placed?.part ?? body?.hanging?.part;
  if (id !== 'pattern' || !part) return { state, actions: [] };
  const { edit, name } = keepPatternEdit(part, world.study.document, world.makeId);
  const words = `kept as "${name}": it is among the parts of Place parts`;
  return { state, actions: [{ kind: 'edit', edit, words }] };
};

const panel = (state: PickState, world: ToolWorld): readonly PanelField[] => {
  const bodies = bodiesOf(world, pickedToo(state.chosen, world));
  if (state.held || bodies.length === 0) return [];
  const [first] = bodies;
  const isPart = bodies.length === 1 && first?.subject.kind === 'part';
  const text = bodies.length === 1 ? (first?.name ?? '') : `${bodies.length} things`;
  return [
    { kind: 'words', id: 'says', text },
    ...buttons
      .filter(({ id }) => bodies.some(({ placed }) => placed !== null) || id !== 'turn')
      .map(({ id, label, key }) => ({ kind: 'action', id, label, key }) as const),
    ...(isPart ? [{ kind: 'action', id: 'pattern', label: 'Keep as a pattern' } as const] : [])
  ];
};

const show = (state: PickState, world: ToolWorld) => {
  if (state.held) return state.held.show(world);
  if (state.box) {
    const { from, to } = state.box;
    const shape = {
      kind: 'box',
      x: Math.min(from.x, to.x),
      y: Math.min(from.y, to.y),
      width: Math.abs(to.x - from.x),
      height: Math.abs(to.y - from.y)
    } as const;
    return { shapes: [{ shape, style: 'hand.box' }], cursor: 'crosshair' as const };
  }
  const bodies = bodiesOf(world, pickedToo(state.chosen, world));
  return { shapes: [...bodies.flatMap(frameOf), ...turnHandle(bodies, world)] };
};

/** The frame round something chosen. */
const frameOf = ({ at, placed }: ReturnType<typeof bodiesOf>[number]): readonly PreviewShape[] => {
  const box = placed ? boxOfPart(placed) : { x: at.x - 3, y: at.y - 3, width: 6, height: 6 };
  const gap = 1.6;
  const { x, y, width, height } = box;
  const shape = {
    kind: 'box',
    x: x - gap,
    y: y - gap,
    width: width + 2 * gap,
    height: height + 2 * gap,
    round: 1.5
  } as const;
  return [{ shape, style: 'hand.box' }];
};

export const pickAndMove: Tool<PickState> = {
  id: 'pick',
  name: 'Pick and move',
  key: 'm',
  hint: 'Press to pick; drag a part or a support to move it. Shift and drag chooses several.',
  icon: 'M5 2.5l10 8.2-4.6.7 2.5 5-2 1-2.4-5L5 15.6z',
  resting,
  step,
  panel,
  show
};
