// Places parts: what is written in the field stands under the pointer, and a press puts it down. A part
// with two leads may be hung from terminal to terminal instead.
import { addElement, changeElement, doMany } from '#document/edits.ts';
import type { Edit, Part } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { drawPart } from '#drawing/pictorial/draw-part.ts';
import { placePart } from '#drawing/pictorial/placed-part.ts';
import { holdHomes } from '../bodies.ts';
import { boxOfPart, type Home } from '../scene.ts';
import { gridMm, snap, type Snapped } from '../snapping.ts';
import type {
  PreviewShape,
  Spot,
  Tool,
  ToolAction,
  ToolEvent,
  ToolPreview,
  ToolStep,
  ToolWorld
} from '../tool.ts';
import { asTurn, turnStep } from '../turn-grip.ts';
import { buildOrdered } from './build-parts.ts';
import { freeSpot, layRows } from './lay-rows.ts';
import { lineUpOf, placePanel } from './place-panel.ts';
import { counter, partsFor, readyOf, resting, type PlaceState } from './place-state.ts';
import type { PartOrder } from './read-order.ts';

const drawPx = 7;

const round = (value: number): number => Math.round(value * 100) / 100;

/** Units that nothing is drawn of yet begin where their first part is placed. */
export const settle = ({ unit, box, corner }: Home): readonly Edit[] =>
  box !== null || unit.place !== undefined
    ? []
    : [changeElement('unit', unit.id, { place: { x: corner.x, y: corner.y } })];

const putDown = (state: PlaceState, world: ToolWorld, at: Spot): ToolStep<PlaceState> => {
  const { orders, problem } = readyOf(state, world);
  const home = world.scene.homeAt(at);
  if (problem !== null || orders.length === 0) return say(state, problem ?? 'write a part first');
  if (!home) return say(state, 'there is no unit to place it in');
  const parts = partsFor(orders, world, home.unit.id);
  const known = world.study.document.parts;
  const rows = layRows(parts);
  const edits = parts.map((part, index): Edit => {
    const off = rows[index] ?? { x: 0, y: 0 };
    const { x, y } = world.scene.toUnit(home, { x: at.x + off.x, y: at.y + off.y });
    const { rotation, face } = state;
    const place = {
      x: round(x),
      y: round(y),
      by: 'hand' as const,
      ...(rotation === 0 ? {} : { rotation }),
      ...(face === 'below' ? {} : { face })
    };
    return Object.hasOwn(known, part.id)
      ? changeElement('part', part.id, { unit: home.unit.id, place })
      : addElement('part', { ...part, place });
  });
  return done(state, world, parts, [...settle(home), ...holdHomes(world.scene), ...edits]);
};

const done = (
  state: PlaceState,
  world: ToolWorld,
  parts: readonly Part[],
  edits: readonly Edit[]
): ToolStep<PlaceState> => {
  const [first] = parts;
  const name = parts.length === 1 ? (first?.reference ?? '') : `${parts.length} parts`;
  const words = `${parts.map(({ reference }) => reference).join(', ')} placed`;
  const action: ToolAction = { kind: 'edit', edit: doMany(`place ${name}`, edits), words };
  return { state: { ...state, hung: null }, actions: [action], claims: true };
};

const say = (state: PlaceState, words: string): ToolStep<PlaceState> => ({
  state,
  actions: [{ kind: 'say', words }],
  claims: true
});

/** The one order that may hang between terminals, or null. */
const hangingOrder = (state: PlaceState, world: ToolWorld): PartOrder | null => {
  const [only, second] = readyOf(state, world).orders;
  return only?.sort.hangs === true && second === undefined ? only : null;
};

const hang = (
  state: PlaceState,
  world: ToolWorld,
  order: PartOrder,
  key: string
): ToolStep<PlaceState> => {
  const there = world.scene.terminalByKey.get(key);
  const from = state.hung === null ? null : world.scene.terminalByKey.get(state.hung);
  if (!there) return { state, actions: [] };
  if (!from) return say({ ...state, hung: key }, 'now press the terminal of its other lead');
  if (from.key === key) return say(state, 'its other lead sits on another terminal');
  const unit = world.study.index.partById.get(there.ref.part)?.unit ?? '';
  const [part] = partsFor([order], world, unit);
  if (!part) return { state, actions: [] };
  const leads = sortByOrder(part.terminals).map((terminal, index) => {
    const { offset, ...rest } = terminal;
    void offset;
    return { ...rest, on: index === 0 ? from.ref : there.ref };
  });
  const terminals = Object.fromEntries(leads.map((lead) => [lead.id, lead]));
  return done(state, world, [part], [addElement('part', { ...part, terminals })]);
};

const restAt = ({ at, free }: PlaceState, { scene, pxPerMm, lengthUnit }: ToolWorld): Snapped => {
  if (at === null) return { at: { x: 0, y: 0 }, guides: [] };
  const others = [...scene.geometry.places.parts.values()].flatMap(({ pose, inTray }) =>
    inTray ? [] : [pose.at]
  );
  return snap(at, {
    others,
    reachMm: drawPx / pxPerMm,
    gridMm: gridMm(lengthUnit),
    origin: scene.homeAt(at)?.corner ?? { x: 0, y: 0 },
    free
  });
};

const step = (state: PlaceState, event: ToolEvent, world: ToolWorld): ToolStep<PlaceState> => {
  switch (event.kind) {
    case 'hover':
      return { state: { ...state, at: event.at, free: event.alt }, actions: [] };
    case 'tap': {
      const order = hangingOrder(state, world);
      const key = event.subject?.kind === 'terminal' ? event.subject.id : null;
      const now = { ...state, at: event.at, free: event.alt };
      if (order && key !== null) return hang(now, world, order, key);
      const next = putDown(now, world, restAt(now, world).at);
      return event.touch ? { ...next, state: { ...next.state, at: null } } : next;
    }
    case 'give-up':
      return { state: { ...state, at: null }, actions: [] };
    case 'field':
      return setField(state, event, world);
    case 'key':
      return pressKey(state, event, world);
    default:
      return { state, actions: [] };
  }
};

const turned = (state: PlaceState, by: number): ToolStep<PlaceState> => ({
  state: { ...state, rotation: asTurn(state.rotation + by) },
  actions: [],
  claims: true
});

const turnedOver = (state: PlaceState): ToolStep<PlaceState> => {
  const face = state.face === 'below' ? 'above' : 'below';
  return say({ ...state, face }, face === 'above' ? 'it goes above the deck' : 'below the deck');
};

const besideTheLast = (state: PlaceState, world: ToolWorld): ToolStep<PlaceState> => {
  const { scene, study } = world;
  const { orders } = readyOf(state, world);
  const home = scene.homes.find(({ box }) => box !== null) ?? scene.homes[0];
  if (!home) return putDown(state, world, { x: 0, y: 0 });
  const [part] = buildOrdered(orders.slice(0, 1), study.document, {
    unit: home.unit.id,
    makeId: world.makeId
  });
  const taken = sortByOrder(study.document.parts).flatMap(({ id, unit }) => {
    const placed = scene.geometry.places.parts.get(id);
    if (!placed || placed.inTray || unit !== home.unit.id) return [];
    const { width, height } = boxOfPart(placed);
    return [{ at: placed.pose.at, width, height }];
  });
  const at = part ? freeSpot(taken, part) : { x: 0, y: 0 };
  return putDown(state, world, taken.length === 0 ? scene.toSheet(home, at) : at);
};

const setField = (
  state: PlaceState,
  { id, value, done: isDone }: Extract<ToolEvent, { kind: 'field' }>,
  world: ToolWorld
): ToolStep<PlaceState> => {
  switch (id) {
    case 'what': {
      const next = { ...state, text: value, hung: null };
      return isDone ? besideTheLast(next, world) : { state: next, actions: [] };
    }
    case 'sort':
      return { state: { ...state, text: value, hung: null }, actions: [] };
    case 'line-up':
      return { state: { ...state, text: lineUpOf(world), hung: null }, actions: [] };
    case 'turn':
      return turned(state, turnStep * 3);
    case 'over':
      return turnedOver(state);
    default:
      return { state, actions: [] };
  }
};

const pressKey = (
  state: PlaceState,
  { key, ctrl, shift }: Extract<ToolEvent, { kind: 'key' }>,
  world: ToolWorld
): ToolStep<PlaceState> => {
  const letter = key.toLowerCase();
  if (ctrl) return { state, actions: [] };
  if (letter === 'r') return turned(state, shift ? -turnStep : turnStep);
  if (letter === 'o') return turnedOver(state);
  if (key === 'Enter') return besideTheLast(state, world);
  if (key === 'Escape' && state.hung !== null) return say({ ...state, hung: null }, 'given up');
  return { state, actions: [] };
};

const show = (state: PlaceState, world: ToolWorld): ToolPreview => {
  const { orders } = readyOf(state, world);
  if (state.at === null || orders.length === 0) return { shapes: [], cursor: 'crosshair' };
  const from = state.hung === null ? null : world.scene.terminalByKey.get(state.hung);
  if (from) {
    const points = [from.at.x, from.at.y, state.at.x, state.at.y];
    return {
      shapes: [{ shape: { kind: 'line', points }, style: 'hand.line' }],
      cursor: 'crosshair'
    };
  }
  const { at, guides } = restAt(state, world);
  const parts = partsFor(orders, { ...world, makeId: counter() }, '');
  const rows = layRows(parts);
  const mirrored = world.scene.face === 'above';
  const shapes = parts.flatMap((part, index): PreviewShape[] => {
    const off = rows[index] ?? { x: 0, y: 0 };
    const pose = { at: { x: at.x + off.x, y: at.y + off.y }, rotation: state.rotation, mirrored };
    const placed = placePart(part, sortByOrder(part.terminals), pose, false);
    return [...drawPart(placed, { used: new Set(placed.spots.keys()) }), nameOf(part, pose.at)];
  });
  return { shapes: [...guides, ...shapes], cursor: 'copy' };
};

const nameOf = ({ reference }: Part, { x, y }: Spot): PreviewShape => ({
  shape: {
    kind: 'text',
    x,
    y: y + 1,
    text: reference,
    size: 2.8,
    anchor: 'middle',
    face: 'sans',
    bold: true
  },
  style: 'hand.name'
});

export const placeParts: Tool<PlaceState> = {
  id: 'place',
  name: 'Place parts',
  key: 'p',
  hint: 'Write or choose a part, then press where it stands. R turns it, O takes it to the other face.',
  icon: 'M10 3.5a6.5 6.5 0 1 0 .01 0zM10 7v6M7 10h6',
  resting,
  rest: (state) => ({ ...state, at: null, hung: null }),
  step,
  panel: placePanel,
  show
};
