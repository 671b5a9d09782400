// The third leg of a study: wire by wire what it carries, what its neighbours add, what it needs.
import type { Id } from '#document/index.ts';
import { findMates, type Mate, type MatesOf } from './bundle-mates.ts';
import { gatherBundles, type Bundles } from './bundles.ts';
import { findCableClasses, type CableClasses } from './cable-classes.ts';
import type { Electrics } from './electrics.ts';
import { groupsOf } from './group-nets.ts';
import type { WireSlot } from './index-wires.ts';
import { agrees } from './network/holders.ts';
import { newIslands } from './network/changed-islands.ts';
import { islandAt } from './network/solve-circuits.ts';
import { changedKeys, keepFields, keepMap, patchMap } from './same.ts';
import { spreadSeriesCurrent, type SeriesAmps } from './series-current.ts';
import {
  loadWire,
  standsAlike,
  studyWire,
  type LoadedWire,
  type StudiedWire
} from './study-wire.ts';
import type { Net } from './types.ts';
import { findUnitRails, type UnitRails } from './unit-rails.ts';

export interface WiresStudied {
  readonly electrics: Electrics;
  readonly seriesAmps: SeriesAmps;
  readonly loaded: ReadonlyMap<Id, LoadedWire>;
  readonly bundles: Bundles;
  readonly mates: MatesOf;
  readonly rails: UnitRails;
  readonly cables: CableClasses;
  readonly studied: ReadonlyMap<Id, StudiedWire>;
}

export function studyWires(electrics: Electrics, before?: WiresStudied): WiresStudied {
  const { connections, alone, policy, netOf } = electrics;
  const was = before?.electrics;
  const seriesAmps = spreadSeriesCurrent(
    connections.wires,
    connections.points,
    before && {
      wires: was?.connections.wires,
      points: was?.connections.points,
      amps: before.seriesAmps
    }
  );
  const loaded = loadWires(electrics, seriesAmps, before);
  const bundles = gatherBundles(
    alone,
    before && {
      alone: before.electrics.alone,
      bundles: before.bundles,
      isSameOrder: was?.connections.layout.ids === connections.layout.ids
    }
  );
  const mates = matesIn(bundles, loaded, before);
  const isSameRails =
    was?.netOf === netOf && was.policy === policy && was.connections.parts === connections.parts;
  const rails =
    before && isSameRails
      ? before.rails
      : findUnitRails(
          netOf.values(),
          (key) => connections.parts.terminalByKey.get(key),
          policy,
          was?.policy === policy ? before?.rails : undefined
        );
  const isSameCables =
    before !== undefined &&
    was?.policy === policy &&
    was.connections.layout.ids === connections.layout.ids &&
    ![...changedKeys(before.loaded, loaded)].some(
      (id) => isInCable(before.loaded.get(id)) || isInCable(loaded.get(id))
    );
  const cables = isSameCables
    ? before.cables
    : findCableClasses(loaded, policy, was?.policy === policy ? before?.cables : undefined);
  const study = (id: Id, known: StudiedWire | undefined): StudiedWire | undefined => {
    const wire = loaded.get(id);
    if (!wire) return undefined;
    const inCable = cables.get(wire.alone.slot.wire.cable ?? '');
    return studyWire(wire, mates.get(id) ?? null, policy, rails.classFor, inCable, known);
  };
  const isSameForAll =
    before?.rails === rails &&
    before.mates === mates &&
    before.cables === cables &&
    was?.policy === policy;
  const studied =
    before && isSameForAll && was.connections.layout.ids === connections.layout.ids
      ? patchMap(before.studied, changedKeys(before.loaded, loaded), study)
      : mapInOrder(connections.layout.ids, (id) => study(id, before?.studied.get(id)));
  return { electrics, seriesAmps, loaded, bundles, mates, rails, cables, studied };
}

const isInCable = (wire: LoadedWire | undefined): boolean =>
  wire?.alone.slot.wire.cable !== undefined;

function mapInOrder<Value>(
  ids: readonly Id[],
  make: (id: Id) => Value | undefined
): ReadonlyMap<Id, Value> {
  const map = new Map<Id, Value>();
  for (const id of ids) {
    const value = make(id);
    if (value !== undefined) map.set(id, value);
  }
  return map;
}

/** Mates are looked for again where a wire of a bundle stands otherwise than before. */
function matesIn(
  bundles: Bundles,
  loaded: ReadonlyMap<Id, LoadedWire>,
  before: WiresStudied | undefined
): MatesOf {
  if (before?.bundles === bundles) {
    const moved = [...changedKeys(before.loaded, loaded)].filter(
      (id) => loaded.get(id)?.standing !== before.loaded.get(id)?.standing
    );
    if (!moved.some((id) => bundles.of.has(id))) return before.mates;
  }
  const mates = findMates(bundles.all, (id) => loaded.get(id)?.standing);
  const kept = new Map<Id, Mate>();
  for (const [id, mate] of mates) kept.set(id, keepFields(before?.mates.get(id), mate));
  return keepMap(before?.mates, kept);
}

function loadWires(
  electrics: Electrics,
  seriesAmps: SeriesAmps,
  before: WiresStudied | undefined
): ReadonlyMap<Id, LoadedWire> {
  const { connections, alone, netOf, network } = electrics;
  const { wires, nets, layout } = connections;
  const load = (id: Id, known: LoadedWire | undefined): LoadedWire | undefined => {
    const own = alone.get(id);
    const slot = wires.slotById.get(id);
    if (!own || !slot) return undefined;
    const groups = groupsOf(slot, nets);
    const onNets = groups.map((group) => netOf.get(group)).filter((net) => net !== undefined);
    const current = network.currents.get(id) ?? null;
    const phase = phaseAt(electrics, slot, onNets[0]);
    const amps = seriesAmps.get(id) ?? null;
    return loadWire({ alone: own, nets: onNets, current, seriesAmps: amps, phase }, known);
  };
  const was = before?.electrics;
  const isPatch =
    was?.connections.layout.ids === layout.ids &&
    was.connections.points.rootOf === connections.points.rootOf &&
    before?.seriesAmps === seriesAmps;
  if (!isPatch) {
    const all = mapInOrder(layout.ids, (id) => load(id, before?.loaded.get(id)));
    return keepMap(before?.loaded, all);
  }
  const dirty = new Set([
    ...changedKeys(was.alone, alone),
    ...changedKeys(was.network.currents, network.currents),
    ...changedKeys(network.currents, was.network.currents)
  ]);
  for (const group of changedKeys(was.netOf, netOf)) {
    const net = netOf.get(group);
    const groupWas = was.connections.nets.byId.get(group.id);
    const isAlike = net && standsAlike(groupWas && was.netOf.get(groupWas), net);
    const isOnIt = (id: Id): boolean =>
      before.loaded.get(id)?.nets.some((one) => one.id === net?.id) === true;
    for (const id of group.wires) if (!isAlike || !isOnIt(id)) dirty.add(id);
  }
  // The phase may have turned wherever the ac was solved again.
  const [acWas, ac] = [was.network.circuits.ac, network.circuits.ac];
  for (const { solution, groups } of newIslands(acWas, ac)) {
    if (solution) for (const { wires: own } of groups) for (const id of own) dirty.add(id);
  }
  return patchMap(before.loaded, dirty, load);
}

/** 1 or -1: the phase of a wire's ac. Null where the network does not come to about the same volts. */
function phaseAt(
  { connections, network }: Electrics,
  { from, to }: WireSlot,
  net: Net | undefined
): number | null {
  const end = from ?? to;
  if (!end || !net?.acV || net.isChassis) return null;
  const point = connections.points.rootOf[end.number] ?? end.number;
  const solution = islandAt(network.circuits.ac, point)?.solution;
  if (!solution || solution.origin !== null) return null;
  const volts = solution.voltsAt(point);
  return volts !== null && agrees(net.acV.value, Math.abs(volts)) ? Math.sign(volts) : null;
}
