// Places parts: what is written in the field stands under the pointer, and a press puts it down. A part
// with two leads may be hung from terminal to terminal instead.
import { addElement, changeElement, doMany } from '#document/edits.ts';
import type { Edit, Part } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { drawPart } from '#drawing/pictorial/draw-part.ts';
import { placePart } from '#drawing/pictorial/placed-part.ts';
import { holdHomes } from '../bodies.ts';
import type { PanelField } from '../panel.ts';
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
import { partSorts } from './part-sorts.ts';
import { readOrders, type PartOrder } from './read-order.ts';
import { sampleShapes } from './samples.ts';

export interface PlaceState {
  readonly text: string;
  readonly at: Spot | null;
  readonly free: boolean;
  readonly rotation: number;
  readonly face: 'below' | 'above';
  /** The terminal that the first lead of a hanging part is on. */
  readonly hung: string | null;
}

const drawPx = 7;

const resting: PlaceState = {
  text: partSorts[0]?.example ?? '',
  at: null,
  free: false,
  rotation: 0,
  face: 'below',
  hung: null
};

interface Ready {
  readonly orders: readonly PartOrder[];
  readonly problem: string | null;
}

/** A reference that is written twice places nothing twice. */
const takenAlready = (orders: readonly PartOrder[], { study }: ToolWorld): string | null => {
  const named = orders.flatMap(({ reference }) => reference ?? []);
  const twice = named.find((reference, index) => named.indexOf(reference) !== index);
  if (twice !== undefined) return twice;
  const there = study.index.parts.find(
    (part) => part.place !== undefined && named.includes(part.reference.toUpperCase())
  );
  return there?.reference ?? null;
};

const readyOf = ({ text }: PlaceState, world: ToolWorld): Ready => {
  const reading = readOrders(text, Object.values(world.study.document.patterns));
  if (!reading.ok) return { orders: [], problem: reading.problem };
  const taken = takenAlready(reading.orders, world);
  if (taken === null) return { orders: reading.orders, problem: null };
  return {
    orders: [],
    problem: `${taken} is placed already: leave the reference out for the next`
  };
};

const waiting = (order: PartOrder, { study }: ToolWorld): Part | undefined =>
  order.reference === null
    ? undefined
    : study.index.parts.find(({ reference }) => reference.toUpperCase() === order.reference);

/** The ordered parts, those first that are in the document and only have no place yet. */
const partsFor = (orders: readonly PartOrder[], world: ToolWorld, unit: string): Part[] => {
  const fresh = orders.filter((order) => waiting(order, world) === undefined);
  const built = [...buildOrdered(fresh, world.study.document, { unit, makeId: world.makeId })];
  return orders.flatMap((order) => waiting(order, world) ?? built.shift() ?? []);
};

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

/** The tube line-up of the set, as one text; empty where nobody wrote it. */
const lineUpOf = ({ study }: ToolWorld): string =>
  (study.document.identity.tubes ?? '').replaceAll(/\s*[\n;]\s*/g, ', ').trim();

const panel = (state: PlaceState, world: ToolWorld): readonly PanelField[] => {
  const { orders, problem } = readyOf(state, world);
  const patterns = sortByOrder(world.study.document.patterns);
  const options = [
    ...partSorts.map(({ id, name, example }) => ({
      value: example,
      label: name,
      shapes: sampleShapes(id)
    })),
    ...patterns.map(({ name }) => ({ value: name, label: name }))
  ];
  const parts = partsFor(orders, { ...world, makeId: counter() }, '');
  const words =
    problem ??
    (parts.length === 0 ? 'Choose a part, or write one.' : parts.map(describe).join(' · '));
  return [
    {
      kind: 'text',
      id: 'what',
      label: 'Part, or several with commas',
      value: state.text,
      example: '6CG7, 3 x strip 5, R12 47k',
      commit: 'Place beside',
      wide: true
    },
    { kind: 'words', id: 'says', text: words, tone: problem === null ? 'plain' : 'problem' },
    { kind: 'choice', id: 'sort', label: 'Parts', value: state.text, options },
    { kind: 'action', id: 'turn', label: 'Turn 45°', key: 'R' },
    {
      kind: 'action',
      id: 'over',
      label: state.face === 'above' ? 'Above the deck' : 'Below the deck',
      key: 'O'
    },
    ...(lineUpOf(world) === ''
      ? []
      : [{ kind: 'action', id: 'line-up', label: 'The tube line-up' } as const])
  ];
};

const describe = ({ reference, type, value, terminals }: Part): string => {
  const count = Object.keys(terminals).length;
  const what = type ?? value;
  return `${reference}${what === undefined ? '' : ` ${what}`}, ${count} terminal${count === 1 ? '' : 's'}`;
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

/** Ids for parts that are only shown. */
const counter = (): ((kind: string) => string) => {
  let count = 0;
  return (kind) => `${kind.charAt(0)}${(count += 1)}`;
};

export const placeParts: Tool<PlaceState> = {
  id: 'place',
  name: 'Place parts',
  key: 'p',
  hint: 'Write or choose a part, then press where it stands. R turns it, O takes it to the other face.',
  icon: 'M10 3.5a6.5 6.5 0 1 0 .01 0zM10 7v6M7 10h6',
  resting,
  rest: (state) => ({ ...state, at: null, hung: null }),
  step,
  panel,
  show
};
