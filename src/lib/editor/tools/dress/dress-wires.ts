// Dresses many wires at once: press the wires (or parts, for all of their wires), press the supports in
// order, and all go through them. Also what belongs to a run as a whole: its cable, its length outside.
import type { Subject } from '#drawing/display-list.ts';
import { classBandOf } from '#study/index.ts';
import { isHeldFast } from '#study/plan-routes.ts';
import { criticalMarks } from '../../core/critical-marks.ts';
import { counted } from '../../core/words.ts';
import type { PreviewShape, Tool, ToolEvent, ToolPreview, ToolStep, ToolWorld } from '../tool.ts';
import { dressPanel } from './dress-panel.ts';
import { chosenWires, resting, say, wayWords, type DressState } from './dress-state.ts';
import { autoRoutesEdit, dressEdit } from './route-wires.ts';
import { setCable, setLies, setMark, setOutside } from './run-fields.ts';

const wiresOf = (subject: Subject | null, { study }: ToolWorld): readonly string[] => {
  const { index } = study;
  const at = (key: string): readonly string[] => (index.wiresAt.get(key) ?? []).map(({ id }) => id);
  switch (subject?.kind) {
    case 'wire':
      return [subject.id];
    case 'terminal':
      return at(subject.id);
    case 'part':
      return (index.terminalsOf.get(subject.id) ?? []).flatMap(({ id }) =>
        at(`${subject.id}/${id}`)
      );
    case 'cable':
      return index.wires.filter(({ cable }) => cable === subject.id).map(({ id }) => id);
    default:
      return [];
  }
};

/** Wires that run through a box. */
const wiresIn = (
  { scene }: ToolWorld,
  { from, to }: NonNullable<DressState['box']>
): readonly string[] => {
  const [left, right] = [Math.min(from.x, to.x), Math.max(from.x, to.x)];
  const [top, bottom] = [Math.min(from.y, to.y), Math.max(from.y, to.y)];
  return scene.geometry.lines.flatMap(({ wire, line }) =>
    line.some(({ x, y }) => x >= left && x <= right && y >= top && y <= bottom) ? [wire] : []
  );
};

const toggled = (state: DressState, ids: readonly string[]): DressState => {
  const wires = new Set(state.wires);
  const isOn = ids.every((id) => wires.has(id));
  for (const id of ids) {
    if (isOn) wires.delete(id);
    else wires.add(id);
  }
  return { ...state, wires };
};

const step = (state: DressState, event: ToolEvent, world: ToolWorld): ToolStep<DressState> => {
  switch (event.kind) {
    case 'tap':
      return tap(state, event, world);
    case 'grab':
      return event.shift
        ? { state: { ...state, box: { from: event.at, to: event.at } }, actions: [], claims: true }
        : { state, actions: [] };
    case 'drag':
      return state.box
        ? { state: { ...state, box: { ...state.box, to: event.at } }, actions: [] }
        : { state, actions: [] };
    case 'drop': {
      if (!state.box) return { state, actions: [] };
      const ids = wiresIn(world, { ...state.box, to: event.at });
      const wires = new Set([...state.wires, ...ids]);
      return say({ ...state, wires, box: null }, `${counted(wires.size, 'wire')} chosen`);
    }
    case 'give-up':
      return { state: { ...state, box: null }, actions: [] };
    case 'field':
      return setField(state, event, world);
    case 'key':
      if (event.key === 'Enter') return dress(state, world);
      if (event.key === 'Escape' && (state.wires.size > 0 || state.supports.length > 0)) {
        return say({ ...state, wires: new Set(), supports: [] }, 'nothing chosen');
      }
      return { state, actions: [] };
    default:
      return { state, actions: [] };
  }
};

const tap = (
  state: DressState,
  { subject, at, reachMm }: Extract<ToolEvent, { kind: 'tap' }>,
  world: ToolWorld
): ToolStep<DressState> => {
  const support = world.scene.supportAt(at, reachMm);
  if (support) {
    const { supports } = state;
    const next = supports.includes(support.id)
      ? supports.filter((id) => id !== support.id)
      : [...supports, support.id];
    return say({ ...state, supports: next }, wayWords(next, world));
  }
  const ids = wiresOf(subject, world);
  if (ids.length === 0) return say(state, 'press wires, then the supports on their way');
  const next = toggled(state, ids);
  return say(next, `${counted(next.wires.size, 'wire')} chosen`);
};

const dress = (state: DressState, world: ToolWorld): ToolStep<DressState> => {
  const wires = chosenWires(state, world);
  if (wires.length === 0) return say(state, 'choose wires first');
  if (state.supports.length === 0) return say(state, 'press the supports on their way first');
  const edit = dressEdit(world, wires, state.supports);
  const words = `${counted(wires.length, 'wire')} through ${wayWords(state.supports, world)}`;
  return { state, actions: [{ kind: 'edit', edit, words }], claims: true };
};

const free = (state: DressState, world: ToolWorld): ToolStep<DressState> => {
  const wires = chosenWires(state, world).filter(({ route }) => route !== undefined);
  if (wires.length === 0) return say(state, 'none of them goes through a support');
  return { state, actions: [{ kind: 'edit', edit: dressEdit(world, wires, []) }], claims: true };
};

const route = (state: DressState, world: ToolWorld): ToolStep<DressState> => {
  const only = state.wires.size === 0 ? undefined : state.wires;
  const asked = world.study.index.wires.filter(({ id }) => only === undefined || only.has(id));
  const kept = asked.filter(isHeldFast).length;
  const left = kept === 0 ? '' : `; ${counted(kept, 'wire')} left as they are`;
  const planned = autoRoutesEdit(world, only);
  if (!planned) return say(state, `no route would change${left}`);
  const words = `${counted(planned.routes.length, 'wire')} routed${left}`;
  return { state, actions: [{ kind: 'edit', edit: planned.edit, words }], claims: true };
};

const setField = (
  state: DressState,
  { id, value, done }: Extract<ToolEvent, { kind: 'field' }>,
  world: ToolWorld
): ToolStep<DressState> => {
  switch (id) {
    case 'dress':
      return dress(state, world);
    case 'free':
      return free(state, world);
    case 'route':
      return route(state, world);
    case 'none':
      return say({ ...state, wires: new Set(), supports: [] }, 'nothing chosen');
    case 'outside': {
      const next = { ...state, outside: value };
      return done ? setOutside(next, world) : { state: next, actions: [] };
    }
    case 'cable': {
      const next = { ...state, cable: value };
      return done ? setCable(next, world) : { state: next, actions: [] };
    }
    case 'lies': {
      const next = { ...state, lies: value };
      return done ? setLies(next, world) : { state: next, actions: [] };
    }
    default: {
      const mark = criticalMarks.find(({ key }) => key === id);
      if (mark) return setMark(state, world, mark.key, value === 'on');
      return { state, actions: [] };
    }
  }
};

const show = (state: DressState, world: ToolWorld): ToolPreview => {
  const { scene, study } = world;
  const lines = scene.geometry.lines.flatMap(({ wire, line }): PreviewShape[] => {
    if (!state.wires.has(wire)) return [];
    const shape = { kind: 'line', points: line.flatMap(({ x, y }) => [x, y]) } as const;
    const band = classBandOf(study.wires.get(wire)?.need?.requiredV ?? null);
    return [
      { shape, style: 'hand.chosen' },
      { shape, style: `wire.${band}` }
    ];
  });
  const stops = state.supports.flatMap((id) => scene.geometry.places.supports.get(id)?.at ?? []);
  const rings = stops.flatMap(({ x, y }, index): PreviewShape[] => [
    { shape: { kind: 'circle', x, y, r: 3.4 }, style: 'hand.ring' },
    {
      shape: {
        kind: 'text',
        x: x + 4,
        y: y - 2.4,
        text: String(index + 1),
        size: 3,
        anchor: 'start',
        face: 'sans',
        bold: true
      },
      style: 'hand.name'
    }
  ]);
  if (!state.box) return { shapes: [...lines, ...rings] };
  const { from, to } = state.box;
  const box = {
    kind: 'box',
    x: Math.min(from.x, to.x),
    y: Math.min(from.y, to.y),
    width: Math.abs(to.x - from.x),
    height: Math.abs(to.y - from.y)
  } as const;
  return {
    shapes: [...lines, ...rings, { shape: box, style: 'hand.box' }],
    cursor: 'crosshair'
  };
};

export const dressWires: Tool<DressState> = {
  id: 'dress',
  name: 'Dress wires',
  key: 'd',
  hint: 'Press wires, press supports in order, then Enter: all of them go through.',
  icon: 'M3 5c5 0 4 4 7 4s3-4 7-4M3 8.5c5 0 4 2 7 2s3-2 7-2M3 15c5 0 4-3.5 7-3.5s3 3.5 7 3.5M8.6 7.2h2.8v6H8.6z',
  resting,
  step,
  panel: dressPanel,
  show
};
