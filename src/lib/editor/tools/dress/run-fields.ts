// What belongs to a run as a whole and is written to all chosen wires at once, each one step of undo: its cable,
// its length outside, how it lies, in what it is critical.
import { addElement, doMany, setWireFields } from '#document/edits.ts';
import { orderAtEnd, type Edit, type Wire } from '#document/index.ts';
import { parseQuantity } from '#quantity/index.ts';
import { markCritical, type CriticalMark } from '../../core/critical-marks.ts';
import { counted } from '../../core/words.ts';
import type { ToolStep, ToolWorld } from '../tool.ts';
import { chosenWires, say, type DressState } from './dress-state.ts';

/** What is read from a field and written to every chosen wire. */
const setAll = (
  state: DressState,
  world: ToolWorld,
  name: string,
  editsOf: (wires: readonly Wire[]) => readonly Edit[]
): ToolStep<DressState> => {
  const wires = chosenWires(state, world);
  if (wires.length === 0) return say(state, 'choose wires first');
  const edit = doMany(`${name} of ${counted(wires.length, 'wire')}`, editsOf(wires));
  return { state, actions: [{ kind: 'edit', edit }], claims: true };
};

/** The length that the drawing does not show; empty takes it away. */
export const setOutside = (state: DressState, world: ToolWorld): ToolStep<DressState> => {
  const text = state.outside.trim();
  const parsed = parseQuantity(text === '' ? '0' : text, 'length', {
    defaultUnit: world.lengthUnit
  });
  if (!parsed.ok) return say(state, parsed.problem);
  if (parsed.value < 0) return say(state, 'a length is not less than 0');
  const outsideMm = text === '' ? null : parsed.value;
  return setAll(state, world, 'set the length outside', (wires) =>
    wires.map(({ id }) => setWireFields(id, { outsideMm }))
  );
};

/** One jacket around them; a name that is not known yet makes it. */
export const setCable = (state: DressState, world: ToolWorld): ToolStep<DressState> => {
  const name = state.cable.trim();
  const { cables } = world.study.document;
  const known = Object.values(cables).find((one) => one.name.toLowerCase() === name.toLowerCase());
  return setAll(state, world, 'set the cable', (wires) => {
    if (name === '') return wires.map(({ id }) => setWireFields(id, { cable: null }));
    const id = known?.id ?? world.makeId('cable');
    const order = orderAtEnd(cables);
    const made = { id, order, name, kind: 'multi-conductor', conductors: wires.length };
    const edits = wires.map((wire) => setWireFields(wire.id, { cable: id }));
    return known ? edits : [addElement('cable', made), ...edits];
  });
};

/** A note on how they lie: it stands on the tag of each. Empty takes it away. */
export const setLies = (state: DressState, world: ToolWorld): ToolStep<DressState> => {
  const dress = state.lies.trim() === '' ? null : state.lies.trim();
  return setAll(state, world, 'note the lead dress', (wires) =>
    wires.map(({ id }) => setWireFields(id, { dress }))
  );
};

/** Marks them all critical in one way, or takes the mark away. */
export const setMark = (
  state: DressState,
  world: ToolWorld,
  mark: CriticalMark,
  isSet: boolean
): ToolStep<DressState> =>
  setAll(state, world, isSet ? 'mark critical' : 'take a critical mark', (wires) =>
    wires.map((wire) => markCritical(wire, mark, isSet))
  );
