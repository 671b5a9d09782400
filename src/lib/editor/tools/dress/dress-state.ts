// What is chosen to be dressed, and how it is said.
import type { Wire } from '#document/index.ts';
import type { Spot, ToolStep, ToolWorld } from '../tool.ts';

export interface DressState {
  readonly wires: ReadonlySet<string>;
  readonly supports: readonly string[];
  readonly box: { readonly from: Spot; readonly to: Spot } | null;
  readonly outside: string;
  readonly cable: string;
  /** What is being written of how the wires lie. */
  readonly lies: string;
}

/** Nothing chosen. */
export const resting: DressState = {
  wires: new Set(),
  supports: [],
  box: null,
  outside: '',
  cable: '',
  lies: ''
};

/** Says something and changes nothing of the chassis. */
export const say = (state: DressState, words: string): ToolStep<DressState> => ({
  state,
  actions: [{ kind: 'say', words }],
  claims: true
});

/** The wires that are chosen and still there, in the order of the schedule. */
export const chosenWires = ({ wires }: DressState, { study }: ToolWorld): readonly Wire[] =>
  study.index.wires.filter(({ id }) => wires.has(id));

/** "clamp 1, then clamp 2". */
export const wayWords = (supports: readonly string[], { study }: ToolWorld): string =>
  supports.length === 0
    ? 'no support'
    : supports.map((id) => study.document.supports[id]?.name ?? '?').join(', then ');
