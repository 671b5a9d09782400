// The whole chassis as a network: dc with the tubes drawing, dc before they draw, ac of the line. From
// it every point has its volts and every wire its current, as far as the document tells.
import type { Id, Policy } from '#document/index.ts';
import type { PlacedElement } from '../circuit-elements.ts';
import type { NetGroup } from '../group-nets.ts';
import type { WiresIndex } from '../index-wires.ts';
import { joinsItsEnds } from '../points.ts';
import type { Potentials } from '../potentials.ts';
import { changedKeys, keepItems, keepMap, keepSet, patchMap } from '../same.ts';
import type { AloneOf } from '../wire-alone.ts';
import type { WireLayout } from '../wire-layout.ts';
import {
  branchesOf,
  circuitNames,
  wireBranch,
  type BranchElement,
  type CircuitName,
  type ElementBranches,
  type PlacedBranch
} from './branches.ts';
import { findChangedIslands } from './changed-islands.ts';
import { listNetFigures, type FiguresOf } from './net-figures.ts';
import { listOpenEnds, type OpenEnd } from './open-ends.ts';
import { rectifiedNets, rectifierSources } from './rectifiers.ts';
import { knowRegions, regionsIn, type KnownRegions, type RegionAt } from './regions.ts';
import { findShortedSources, type ShortedSource } from './shorted-sources.ts';
import { holdAc, holdCold, holdLoaded } from './holders.ts';
import { solveCircuit, type Ground, type Holder, type SolvedCircuit } from './solve-circuits.ts';
import { listCurrents, type CurrentsOf } from './wire-currents.ts';

/** By id of the element. */
type ElementsInCircuits = ReadonlyMap<string, InCircuits>;

interface InCircuits {
  readonly element: BranchElement;
  readonly branches: ElementBranches;
}

export interface SolvedNetwork {
  readonly circuits: Readonly<Record<CircuitName, SolvedCircuit>>;
  readonly regions: Readonly<Record<CircuitName, RegionAt>>;
  readonly known: KnownRegions;
  readonly openEnds: readonly OpenEnd[];
  readonly figures: FiguresOf;
  readonly currents: CurrentsOf;
  readonly shorted: readonly ShortedSource[];
  readonly kept: {
    readonly policy: Policy;
    readonly layout: WireLayout;
    readonly rootOf: Int32Array;
    readonly alone: AloneOf;
    readonly ofWire: ReadonlyMap<Id, PlacedBranch>;
    readonly ofElement: ElementsInCircuits;
    readonly rectified: ReadonlyMap<string, PlacedBranch>;
    readonly charged: ReadonlySet<NetGroup>;
  };
}

export interface NetworkInputs extends Ground {
  readonly wires: WiresIndex;
  readonly layout: WireLayout;
  readonly alone: AloneOf;
  readonly elements: readonly PlacedElement[];
  readonly potentials: Potentials;
  readonly policy: Policy;
}

export function solveChassis(inputs: NetworkInputs, before?: SolvedNetwork): SolvedNetwork {
  const { wires, layout, alone, points, nets, elements, potentials, policy } = inputs;
  const was = before?.kept.policy === policy ? before : undefined;
  const ofWire = listWireBranches(inputs, was?.kept);
  const ofElement = listElementBranches(elements, policy, was?.kept.ofElement);
  const rectified = keepMap(
    was?.kept.rectified,
    rectifierSources(elements, potentials, points, policy, was?.kept.rectified)
  );
  const charged = keepSet(was?.kept.charged, rectifiedNets(elements, potentials));
  const { rootOf } = points;
  const kept = { policy, layout, rootOf, alone, ofWire, ofElement, rectified, charged };
  const circuits = solveCircuits(inputs, kept, was);
  const openEnds = listOpenEnds(points.source.parts, wires.slots, was?.openEnds);
  const known = knowRegions({ openEnds, rootOf }, was?.known);
  const regionsOf = (name: CircuitName): RegionAt =>
    regionsIn(name, circuits[name], known, nets.groupAt);
  const regions = { loaded: regionsOf('loaded'), cold: regionsOf('cold'), ac: regionsOf('ac') };
  const isAsBefore =
    was?.known === known &&
    was.kept.ofWire === ofWire &&
    was.kept.ofElement === ofElement &&
    circuitNames.every((name) => was.circuits[name] === circuits[name]);
  if (isAsBefore) return { ...was, kept };
  const shorted = findShortedSources(elements);
  // Where the same is left open, islands that were not solved again say what they said.
  const changed = was?.known === known ? findChangedIslands(was.circuits, circuits) : undefined;
  return {
    circuits,
    regions,
    openEnds,
    known,
    figures: listNetFigures({ circuits, regions, points, nets }, changed?.nets, was?.figures),
    currents: listCurrents(
      { circuits, regions, ofWire, openEnds, shorted },
      changed && withMoved(changed.wires, ofWire, was?.kept.ofWire),
      was?.currents
    ),
    shorted,
    kept
  };
}

/** The wires with those that came or went. */
function withMoved(
  wires: ReadonlySet<Id>,
  now: ReadonlyMap<Id, PlacedBranch>,
  before: ReadonlyMap<Id, PlacedBranch> | undefined
): ReadonlySet<Id> {
  if (now === before || !before) return wires;
  return new Set([...wires, ...changedKeys(before, now), ...changedKeys(now, before)]);
}

function solveCircuits(
  inputs: NetworkInputs,
  { ofWire, ofElement, rectified, charged }: SolvedNetwork['kept'],
  was: SolvedNetwork | undefined
): SolvedNetwork['circuits'] {
  const isSame =
    was?.kept.ofWire === ofWire &&
    was.kept.ofElement === ofElement &&
    was.kept.rectified === rectified;
  const branchesIn = (name: CircuitName): readonly PlacedBranch[] => {
    if (isSame) return was.circuits[name].branches;
    return keepItems(was?.circuits[name].branches, [
      ...ofWire.values(),
      ...[...ofElement.values()].flatMap(({ branches }) => branches[name] ?? []),
      ...(name === 'cold' ? rectified.values() : [])
    ]);
  };
  const solve = (name: CircuitName, holder: Holder, twin?: SolvedCircuit): SolvedCircuit =>
    solveCircuit(branchesIn(name), inputs, holder, was?.circuits[name], twin);
  const loaded = solve('loaded', holdLoaded(inputs, charged));
  return {
    loaded,
    cold: solve('cold', holdCold(loaded.holds, charged), loaded),
    ac: solve(
      'ac',
      holdAc(inputs, (net) => transformerPoint(net, inputs))
    )
  };
}

function listWireBranches(
  { wires, layout, points, alone }: NetworkInputs,
  before: SolvedNetwork['kept'] | undefined
): ReadonlyMap<Id, PlacedBranch> {
  const branchOf = (id: Id): PlacedBranch | undefined => {
    const { wire, from, to } = wires.slotById.get(id) ?? {};
    if (!wire || !from || !to || !joinsItsEnds(wire)) return undefined;
    const [a, b] = [points.rootOf[from.number] ?? -1, points.rootOf[to.number] ?? -1];
    if (a === b) return undefined;
    return wireBranch(id, a, b, alone.get(id)?.ohms ?? null, before?.ofWire.get(id));
  };
  if (before?.layout.ids === layout.ids && before.rootOf === points.rootOf) {
    const changed = changedKeys(before.alone, alone);
    // One that is new to the map would not come to stand in its place.
    const isNew = [...changed].some((id) => !before.ofWire.has(id) && branchOf(id));
    if (!isNew) return patchMap(before.ofWire, changed, branchOf);
  }
  const branches = new Map<Id, PlacedBranch>();
  for (const { wire } of wires.slots) {
    const branch = branchOf(wire.id);
    if (branch) branches.set(wire.id, branch);
  }
  return keepMap(before?.ofWire, branches);
}

function listElementBranches(
  elements: readonly PlacedElement[],
  policy: Policy,
  before: ElementsInCircuits | undefined
): ElementsInCircuits {
  const all = new Map<string, InCircuits>();
  for (const element of elements) {
    const was = before?.get(element.id);
    const isSame = was && standsAsBefore(was.element, element);
    all.set(element.id, isSame ? was : { element, branches: branchesOf(element, policy) });
  }
  return keepMap(before, all);
}

const standsAsBefore = (was: BranchElement, now: BranchElement): boolean =>
  was.values === now.values &&
  was.part === now.part &&
  was.fromPoint === now.fromPoint &&
  was.toPoint === now.toPoint &&
  was.fromKey === now.fromKey &&
  was.toKey === now.toKey;

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
