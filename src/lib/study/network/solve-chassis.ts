// The whole chassis as a network: dc with the tubes drawing, dc before they draw, ac of the line. From
// it every point has its volts and every wire its current, as far as the document tells.
import type { Id, Policy } from '#document/index.ts';
import type { PlacedElement } from '../circuit-elements.ts';
import type { NetGroup } from '../group-nets.ts';
import type { WiresIndex } from '../index-wires.ts';
import { joinsItsEnds } from '../points.ts';
import type { Potentials } from '../potentials.ts';
import { keepItems } from '../same.ts';
import {
  branchesOf,
  wireBranch,
  type CircuitName,
  type ElementBranches,
  type PlacedBranch
} from './branches.ts';
import { listNetFigures, type FiguresOf } from './net-figures.ts';
import { listOpenEnds } from './open-ends.ts';
import { rectifiedNets, rectifierSources } from './rectifiers.ts';
import { findRegions, type Regions } from './regions.ts';
import { findShortedSources, type ShortedSource } from './shorted-sources.ts';
import {
  circuitOf,
  holdAc,
  holdCold,
  holdLoaded,
  noneHeld,
  solveCircuit,
  type Ground,
  type SolvedCircuit
} from './solve-circuits.ts';
import { listCurrents, type CurrentsOf } from './wire-currents.ts';

export interface SolvedNetwork {
  readonly circuits: Readonly<Record<CircuitName, SolvedCircuit>>;
  readonly regions: Readonly<Record<CircuitName, Regions>>;
  /** The loaded circuit's as they are with nothing held: what stands against a declared voltage. */
  readonly freeRegions: () => Regions;
  readonly figures: FiguresOf;
  readonly currents: CurrentsOf;
  readonly shorted: readonly ShortedSource[];
  readonly kept: {
    readonly policy: Policy;
    readonly ofWire: ReadonlyMap<Id, PlacedBranch>;
    readonly ofElement: ReadonlyMap<PlacedElement, ElementBranches>;
    readonly rectified: ReadonlyMap<string, PlacedBranch>;
  };
}

export interface NetworkInputs extends Ground {
  readonly wires: WiresIndex;
  readonly ohmsOf: (wire: Id) => number | null;
  readonly elements: readonly PlacedElement[];
  readonly potentials: Potentials;
  readonly policy: Policy;
}

export function solveChassis(inputs: NetworkInputs, before?: SolvedNetwork): SolvedNetwork {
  const { wires, points, elements, potentials, policy } = inputs;
  const was = before?.kept.policy === policy ? before : undefined;
  const ofWire = listWireBranches(inputs, was?.kept.ofWire);
  const ofElement = listElementBranches(elements, policy, was?.kept.ofElement);
  const rectified = rectifierSources(elements, potentials, points, policy, was?.kept.rectified);
  const charged = rectifiedNets(elements, potentials);
  const isRectified = (net: NetGroup): boolean => charged.has(net);
  const { declared } = inputs;
  const branchesIn = (name: CircuitName): readonly PlacedBranch[] =>
    keepItems(was?.circuits[name].branches, [
      ...ofWire.values(),
      ...circuitOf(ofElement.values(), name),
      ...(name === 'cold' ? rectified.values() : [])
    ]);
  const loaded = solveCircuit(
    branchesIn('loaded'),
    inputs,
    holdLoaded(inputs, isRectified),
    ({ groups }) => groups.flatMap((net) => [declared.get(net)?.dcV, isRectified(net)]),
    was?.circuits.loaded
  );
  const cold = solveCircuit(
    branchesIn('cold'),
    inputs,
    holdCold(loaded, isRectified),
    ({ points: own, groups }) => [
      ...new Set(own.map((point) => loaded.islandAt.get(point))),
      ...groups.map(isRectified)
    ],
    was?.circuits.cold
  );
  const feedOf = (net: NetGroup): number | null => transformerPoint(net, inputs);
  const ac = solveCircuit(
    branchesIn('ac'),
    inputs,
    holdAc(inputs, feedOf),
    ({ groups }) => groups.flatMap((net) => [declared.get(net)?.acV, feedOf(net)]),
    was?.circuits.ac
  );
  const circuits = { loaded, cold, ac };
  const openEnds = listOpenEnds(points.source.parts, wires.slots);
  const regionsOf = (name: CircuitName): Regions =>
    findRegions(name, circuits[name], openEnds, points, inputs.nets);
  const regions = { loaded: regionsOf('loaded'), cold: regionsOf('cold'), ac: regionsOf('ac') };
  const freeRegions = (): Regions => {
    const islands = loaded.islands.map((island) => ({ ...island, held: noneHeld }));
    return findRegions('loaded', { ...loaded, islands }, openEnds, points, inputs.nets);
  };
  return {
    circuits,
    regions,
    freeRegions,
    figures: listNetFigures(circuits, regions, points, before?.figures),
    currents: listCurrents(ofWire, circuits, regions, openEnds, before?.currents),
    shorted: findShortedSources(elements),
    kept: { policy, ofWire, ofElement, rectified }
  };
}

function listWireBranches(
  { wires, points, ohmsOf }: NetworkInputs,
  before: ReadonlyMap<Id, PlacedBranch> | undefined
): ReadonlyMap<Id, PlacedBranch> {
  const branches = new Map<Id, PlacedBranch>();
  for (const { wire, from, to } of wires.slots) {
    if (!from || !to || !joinsItsEnds(wire)) continue;
    const [a, b] = [points.rootOf[from.number] ?? -1, points.rootOf[to.number] ?? -1];
    if (a === b) continue;
    branches.set(wire.id, wireBranch(wire.id, a, b, ohmsOf(wire.id), before?.get(wire.id)));
  }
  return branches;
}

function listElementBranches(
  elements: readonly PlacedElement[],
  policy: Policy,
  before: ReadonlyMap<PlacedElement, ElementBranches> | undefined
): ReadonlyMap<PlacedElement, ElementBranches> {
  const branches = new Map<PlacedElement, ElementBranches>();
  for (const element of elements) {
    branches.set(element, before?.get(element) ?? branchesOf(element, policy));
  }
  return branches;
}

/** The one terminal of a transformer that a net has, where it has one and not several. */
function transformerPoint(net: NetGroup, { points }: NetworkInputs): number | null {
  let only: number | null = null;
  for (const number of net.points) {
    if (points.source.parts.terminals[number]?.part.kind !== 'transformer') continue;
    if (only !== null) return null;
    only = points.rootOf[number] ?? number;
  }
  return only;
}
