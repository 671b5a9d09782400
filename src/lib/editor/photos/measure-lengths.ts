// Measures on the drawing to scale: two places, and how far apart they are. Over a photo without a scale
// it refuses: what it would say means nothing.
import { formatInches, formatMm } from '#quantity/index.ts';
import type { Spot, Tool, ToolAction, ToolEvent, ToolStep, ToolWorld } from '../tools/tool.ts';
import { photoAt } from './photo-grip.ts';

export interface MeasureState {
  readonly from: Spot | null;
  /** The second place, once it is set. */
  readonly to: Spot | null;
  /** Where the pointer or the keys are. */
  readonly at: Spot | null;
}

const resting: MeasureState = { from: null, to: null, at: null };

/** "187.5 mm (7 3/8 in)". */
export const measuredText = (from: Spot, to: Spot): string => {
  const mm = Math.hypot(to.x - from.x, to.y - from.y);
  return `${formatMm(Math.round(mm * 10) / 10)} (${formatInches(mm)})`;
};

const refusalAt = (world: ToolWorld, at: Spot): string | null => {
  const placed = photoAt(world, at);
  if (placed === null || placed.lay.isScaled) return null;
  return `photo ${placed.photo.name} has no scale: nothing can be measured on it. Set its scale under Photos.`;
};

/** The place that is meant: a terminal draws. */
const placeFor = (world: ToolWorld, at: Spot, reachMm: number): Spot =>
  world.scene.terminalAt(at, reachMm)?.at ?? at;

const say = (words: string): ToolAction => ({ kind: 'say', words });

/** True where both places lie in one unit, or in units whose places are known. */
const isTrue = ({ scene }: ToolWorld, from: Spot, to: Spot): boolean => {
  const [one, other] = [scene.homeAt(from), scene.homeAt(to)];
  if (one?.unit.id === other?.unit.id) return true;
  return one?.unit.place !== undefined && other?.unit.place !== undefined;
};

const setPlace = (state: MeasureState, at: Spot, world: ToolWorld): ToolStep<MeasureState> => {
  const refusal = refusalAt(world, at);
  if (refusal !== null) return { state: { ...state, at }, actions: [say(refusal)], claims: true };
  if (state.from === null || state.to !== null) {
    return {
      state: { from: at, to: null, at },
      actions: [say('first place set; now the second')],
      claims: true
    };
  }
  const caution = isTrue(world, state.from, at)
    ? ''
    : '; not true: the places lie in two units that were not placed beside each other';
  return {
    state: { ...state, to: at, at },
    actions: [say(measuredText(state.from, at) + caution)],
    claims: true
  };
};

const steps: Readonly<Record<string, Spot>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 }
};

/** Where the keys begin: the middle of the first unit. */
const startOf = ({ scene }: ToolWorld): Spot => {
  const box = scene.homes[0]?.box;
  return box ? { x: box.x + box.width / 2, y: box.y + box.height / 2 } : { x: 0, y: 0 };
};

const onKey = (
  state: MeasureState,
  { key, shift, alt }: Extract<ToolEvent, { kind: 'key' }>,
  world: ToolWorld
): ToolStep<MeasureState> => {
  const at = state.at ?? startOf(world);
  const step = steps[key];
  if (step !== undefined) {
    const by = alt ? 0.1 : shift ? 10 : 1;
    const next = { x: at.x + step.x * by, y: at.y + step.y * by };
    const from = state.to === null ? state.from : null;
    const words = from === null ? [] : [say(measuredText(from, next))];
    return { state: { ...state, at: next }, actions: words, claims: true };
  }
  if (key === 'Enter' || key === ' ') return setPlace(state, at, world);
  if (key === 'Escape' && state.from !== null) {
    return { state: { ...resting, at: state.at }, actions: [say('let go')], claims: true };
  }
  return { state, actions: [] };
};

const step = (state: MeasureState, event: ToolEvent, world: ToolWorld): ToolStep<MeasureState> => {
  switch (event.kind) {
    case 'hover':
      return { state: { ...state, at: placeFor(world, event.at, event.reachMm) }, actions: [] };
    case 'tap':
      return setPlace(state, placeFor(world, event.at, event.reachMm), world);
    case 'key':
      return onKey(state, event, world);
    default:
      return { state, actions: [] };
  }
};

/** A ring's radius on screen, px. */
const ringPx = 5;

export const measureLengths: Tool<MeasureState> = {
  id: 'measure',
  name: 'Measure',
  key: 'l',
  hint: 'Press two places, or go there with the arrow keys and press Enter.',
  icon: 'M3 13.5 13.5 3 17 6.5 6.5 17zM6 10.5l1.5 1.5M8.5 8l2 2M11 5.5l1.5 1.5',
  resting,
  step,
  show: ({ from, to, at }, world) => {
    const end = to ?? at;
    const r = ringPx / world.pxPerMm;
    const refusal = at === null || to !== null ? null : refusalAt(world, at);
    const rings = [from, end].flatMap((spot) =>
      spot === null ? [] : [{ style: 'hand.ring', shape: { kind: 'circle', ...spot, r } } as const]
    );
    if (refusal !== null && at !== null) {
      return { shapes: rings, words: { text: 'no scale here', at }, cursor: 'crosshair' };
    }
    if (from === null || end === null) return { shapes: rings, cursor: 'crosshair' };
    const shape = { kind: 'line', points: [from.x, from.y, end.x, end.y] } as const;
    return {
      shapes: [{ style: 'hand.under', shape }, { style: 'hand.line', shape }, ...rings],
      words: { text: measuredText(from, end), at: end },
      cursor: 'crosshair'
    };
  }
};
