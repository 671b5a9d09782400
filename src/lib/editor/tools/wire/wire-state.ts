// The wire in the hand: where it begins, what is set of it, and the wire that it would become.
import type { WireEnd } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { EndNames } from '../../schedule/end-text.ts';
import type { Spot, ToolWorld } from '../tool.ts';
import { readFound, type WirePlan } from './next-wire.ts';

export interface WireState {
  /** The key of the terminal that the wire in the hand begins at. */
  readonly from: string | null;
  readonly supports: readonly string[];
  readonly at: Spot | null;
  /** The key of the terminal under the pointer. */
  readonly over: string | null;
  /** The wire is being dragged to its other end. */
  readonly isDragged: boolean;
  /** A terminal's name, as far as it is typed. */
  readonly typed: string;
  readonly prefix: string;
  readonly gauge: string;
  readonly colour: string;
  readonly chains: boolean;
}

/** Nothing in the hand, nothing set. */
export const resting: WireState = {
  from: null,
  supports: [],
  at: null,
  over: null,
  isDragged: false,
  typed: '',
  prefix: '',
  gauge: '',
  colour: '',
  chains: false
};

const names = new WeakMap<Study, EndNames>();
/** How the terminals of a chassis are named; made once for each study. */
export const namesOf = (study: Study): EndNames => {
  const known = names.get(study) ?? new EndNames(study.document, study.index);
  names.set(study, known);
  return known;
};

export const labelOf = ({ study }: ToolWorld, key: string): string => {
  const entry = study.index.terminalByKey.get(key);
  return entry
    ? study.index.labelOf({
        at: { part: entry.part.id, terminal: entry.terminal.id },
        known: 'seen'
      })
    : '?';
};

/** The terminal that the wire in the hand begins at, if it is still there. */
export const startOf = (state: WireState, { study }: ToolWorld): string | null =>
  state.from !== null && study.index.terminalByKey.has(state.from) ? state.from : null;

const endAt = ({ study }: ToolWorld, key: string | null): WireEnd => {
  const entry = key === null ? undefined : study.index.terminalByKey.get(key);
  return entry
    ? { at: { part: entry.part.id, terminal: entry.terminal.id }, known: 'seen' }
    : { known: 'unknown' };
};

/** The wire as it would be drawn, or why it cannot be. */
export const planOf = (
  state: WireState,
  world: ToolWorld,
  to: string | null
): WirePlan | string => {
  const { prefix, gauge, colour, supports } = state;
  const reading = readFound(gauge, colour);
  if (!reading.ok) return reading.why;
  const from = endAt(world, startOf(state, world));
  return { from, to: endAt(world, to), prefix, found: reading.found, supports };
};
