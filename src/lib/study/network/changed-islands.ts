// What was solved again since the last study: the nets and wires whose figures have to be looked at.
import type { Id } from '#document/index.ts';
import type { NetGroup } from '../group-nets.ts';
import { circuitNames, type CircuitName } from './branches.ts';
import type { SolvedCircuit, SolvedIsland } from './solve-circuits.ts';

type Circuits = Readonly<Record<CircuitName, SolvedCircuit>>;

export interface ChangedIslands {
  readonly nets: ReadonlySet<NetGroup>;
  readonly wires: ReadonlySet<Id>;
}

/** Islands that one circuit has and the other has not, of both. */
export function newIslands(before: SolvedCircuit, now: SolvedCircuit): readonly SolvedIsland[] {
  if (before.islands === now.islands) return [];
  const [old, current] = [new Set(before.islands), new Set(now.islands)];
  return [
    ...now.islands.filter((island) => !old.has(island)),
    ...before.islands.filter((island) => !current.has(island))
  ];
}

/** Nets and wires of islands that are new or gone. */
export function findChangedIslands(before: Circuits, now: Circuits): ChangedIslands {
  const nets = new Set<NetGroup>();
  const wires = new Set<Id>();
  const add = ({ groups, branches }: SolvedIsland): void => {
    for (const net of groups) nets.add(net);
    for (const { branch, element } of branches) if (element === null) wires.add(branch.id);
  };
  for (const name of circuitNames) newIslands(before[name], now[name]).forEach(add);
  return { nets, wires };
}
