// From terminal to terminal: press one, press another, and there is a wire. Supports that are pressed on
// the way dress it. Terminals can be named by keys as well, so that no pointer is needed.
import { addElement } from '#document/edits.ts';
import { formatAwg } from '#quantity/index.ts';
import { colourText, wireName } from '../../core/words.ts';
import type { SceneTerminal } from '../scene.ts';
import type { Tool, ToolAction, ToolEvent, ToolStep, ToolWorld } from '../tool.ts';
import { judgeWire } from './judge-wire.ts';
import { lastWire, planWire } from './next-wire.ts';
import { showWire } from './show-wire.ts';
import { wirePanel } from './wire-panel.ts';
import { labelOf, namesOf, planOf, resting, startOf, type WireState } from './wire-state.ts';

/** Nothing in the hand; what is set stays. */
const emptied = (state: WireState): WireState => ({
  ...state,
  from: null,
  supports: [],
  isDragged: false,
  typed: ''
});

const say = (state: WireState, words: string): ToolStep<WireState> => ({
  state,
  actions: [{ kind: 'say', words }],
  claims: true
});

/** Ends the wire in the hand at a terminal, or with its other end not found yet. */
const finish = (state: WireState, world: ToolWorld, to: string | null): ToolStep<WireState> => {
  const plan = planOf(state, world, to);
  if (typeof plan === 'string') return say(state, plan);
  const { study, makeId } = world;
  const wire = planWire(study.document, plan, makeId);
  const { need, danger } = judgeWire(study, wire);
  const ends = `${study.index.labelOf(wire.from)} to ${study.index.labelOf(wire.to)}`;
  const words = `${wireName(wire)}, ${ends}, ${need}${danger === null ? '' : `. ${danger}`}`;
  const edit: ToolAction = { kind: 'edit', edit: addElement('wire', wire), words };
  const next = emptied(state);
  return {
    state: state.chains && to !== null ? { ...next, from: to } : next,
    actions: [edit],
    claims: true
  };
};

/** A terminal was pressed or named. */
const reach = (
  state: WireState,
  world: ToolWorld,
  key: string,
  goesOn: boolean
): ToolStep<WireState> => {
  const from = startOf(state, world);
  const named = { ...state, typed: '' };
  if (from === null) {
    const words = `from ${labelOf(world, key)}; now its other end`;
    return say({ ...named, from: key, supports: [] }, words);
  }
  if (from === key && state.supports.length === 0) {
    return say(emptied(state), state.chains ? 'the chain ends' : 'given up');
  }
  const done = finish(named, world, key);
  return goesOn && done.state.from === null
    ? { ...done, state: { ...done.state, from: key } }
    : done;
};

const terminalUnder = (
  event: Extract<ToolEvent, { kind: 'hover' | 'tap' | 'grab' | 'drag' | 'drop' }>,
  { scene }: ToolWorld
): SceneTerminal | null =>
  event.subject?.kind === 'terminal'
    ? (scene.terminalByKey.get(event.subject.id) ?? null)
    : scene.terminalAt(event.at, event.reachMm);

const step = (state: WireState, event: ToolEvent, world: ToolWorld): ToolStep<WireState> => {
  switch (event.kind) {
    case 'hover':
      return {
        state: { ...state, at: event.at, over: terminalUnder(event, world)?.key ?? null },
        actions: []
      };
    case 'tap':
      return tap({ ...state, at: event.at }, event, world);
    case 'grab': {
      const under = terminalUnder(event, world);
      if (!under) return { state, actions: [] };
      const start = { from: under.key, supports: [], isDragged: true };
      return { state: { ...state, ...start, at: event.at }, actions: [], claims: true };
    }
    case 'drag': {
      const over = terminalUnder(event, world)?.key ?? null;
      return { state: { ...state, at: event.at, over }, actions: [] };
    }
    case 'drop': {
      if (!state.isDragged) return { state, actions: [] };
      const under = terminalUnder(event, world);
      const held = { ...state, isDragged: false };
      if (under && under.key !== state.from) return finish(held, world, under.key);
      return say(emptied(state), 'let go on no terminal');
    }
    case 'give-up':
      return {
        state: state.isDragged ? emptied(state) : { ...state, at: null, over: null },
        actions: []
      };
    case 'field':
      return setField(state, event, world);
    case 'key':
      return pressKey(state, event, world);
  }
};

const tap = (
  state: WireState,
  event: Extract<ToolEvent, { kind: 'tap' }>,
  world: ToolWorld
): ToolStep<WireState> => {
  const under = terminalUnder(event, world);
  if (under) return reach(state, world, under.key, event.shift);
  if (startOf(state, world) === null) return say(state, 'press a terminal');
  const support = world.scene.supportAt(event.at, event.reachMm * 2);
  if (!support || state.supports.at(-1) === support.id) {
    return say(state, 'press the terminal of its other end, or a support on its way');
  }
  return say({ ...state, supports: [...state.supports, support.id] }, `through ${support.name}`);
};

/** Takes what is typed for a terminal. */
const readTyped = (state: WireState, world: ToolWorld): ToolStep<WireState> => {
  const reading = namesOf(world.study).read(state.typed);
  const isStarted = startOf(state, world) !== null;
  switch (reading.kind) {
    case 'terminal':
      return reach(state, world, `${reading.at.part}/${reading.at.terminal}`, false);
    case 'words':
      return say(state, `${reading.text}: ${reading.why}`);
    case 'open':
      if (!isStarted) return say(state, 'name the terminal that the wire begins at');
      // "?" is an end that nobody has found; nothing typed ends a chain.
      return state.typed.trim() === '?' ? finish(state, world, null) : say(emptied(state), 'ended');
  }
};

const setField = (
  state: WireState,
  { id, value, done }: Extract<ToolEvent, { kind: 'field' }>,
  world: ToolWorld
): ToolStep<WireState> => {
  switch (id) {
    case 'terminal': {
      const next = { ...state, typed: value };
      return done ? readTyped(next, world) : { state: next, actions: [] };
    }
    case 'prefix':
    case 'gauge':
    case 'colour':
      return { state: { ...state, [id]: value }, actions: [] };
    case 'chains':
      return { state: { ...state, chains: value === 'on' }, actions: [] };
    case 'again': {
      const last = lastWire(world.study.document);
      const { awg, colour, tracer } = last?.found ?? {};
      const gauge = awg === undefined ? '' : formatAwg(awg);
      return { state: { ...state, gauge, colour: colourText(colour, tracer) }, actions: [] };
    }
    case 'stop':
      return say(emptied(state), 'given up');
    default:
      return { state, actions: [] };
  }
};

const pressKey = (
  state: WireState,
  { key, ctrl, alt }: Extract<ToolEvent, { kind: 'key' }>,
  world: ToolWorld
): ToolStep<WireState> => {
  const isHolding = state.from !== null || state.typed !== '';
  if (ctrl || alt) return { state, actions: [] };
  if (key === 'Escape') return isHolding ? say(emptied(state), 'given up') : { state, actions: [] };
  if (key === 'Enter') {
    return isHolding ? readTyped(state, world) : { state, actions: [] };
  }
  if (key === 'Backspace' && state.typed !== '') {
    return { state: { ...state, typed: state.typed.slice(0, -1) }, actions: [], claims: true };
  }
  // A name begins with a letter; what else is a key of the sheet stays one until then.
  const begins = state.typed === '' ? /^[\p{L}?]$/u.test(key) : key.length === 1;
  if (!begins) return { state, actions: [] };
  return { state: { ...state, typed: state.typed + key }, actions: [], claims: true };
};

export const drawWires: Tool<WireState> = {
  id: 'wire',
  name: 'Wire',
  key: 'w',
  hint: 'Press a terminal, then another. Or type: V3-5, Enter, V4-2, Enter. Esc gives up.',
  icon: 'M4 14.5a1.8 1.8 0 1 0 .01 0zM16 2a1.8 1.8 0 1 0 .01 0zM5.8 16.3C14 16.3 5 4 14.2 3.9',
  readsLetters: true,
  resting,
  rest: (state) => ({ ...emptied(state), at: null, over: null }),
  step,
  panel: wirePanel,
  show: showWire
};
