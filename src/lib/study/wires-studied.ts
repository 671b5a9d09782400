// The third leg of a study: wire by wire what it carries, what its neighbours add, what it needs.
import type { Id } from '#document/index.ts';
import { findMates, type MatesOf } from './bundle-mates.ts';
import { gatherBundles, type Bundles } from './bundles.ts';
import type { Electrics } from './electrics.ts';
import { groupsOf } from './group-nets.ts';
import type { WireSlot } from './index-wires.ts';
import { agrees } from './network/solve-circuits.ts';
import { spreadSeriesCurrent } from './series-current.ts';
import { loadWire, studyWire, type LoadedWire, type StudiedWire } from './study-wire.ts';
import type { Net } from './types.ts';
import { findUnitRails } from './unit-rails.ts';

export interface WiresStudied {
  readonly electrics: Electrics;
  readonly loaded: ReadonlyMap<Id, LoadedWire>;
  readonly bundles: Bundles;
  readonly mates: MatesOf;
  readonly studied: ReadonlyMap<Id, StudiedWire>;
}

export function studyWires(electrics: Electrics, before?: WiresStudied): WiresStudied {
  const { connections, alone, policy, netOf } = electrics;
  const loaded = loadWires(electrics, before);
  const bundles = gatherBundles(
    alone,
    before && { alone: before.electrics.alone, bundles: before.bundles }
  );
  const mates =
    before?.bundles === bundles && before.loaded === loaded
      ? before.mates
      : findMates(bundles.all, (id) => loaded.get(id)?.standing);
  const rails = findUnitRails(
    netOf.values(),
    (key) => connections.parts.terminalByKey.get(key),
    policy
  );
  const studied = new Map<Id, StudiedWire>();
  for (const [id, wire] of loaded) {
    const mate = mates.get(id) ?? null;
    const was = before?.studied.get(id);
    studied.set(id, studyWire(wire, mate, policy, rails.classFor, was));
  }
  return { electrics, loaded, bundles, mates, studied };
}

function loadWires(
  { connections, alone, netOf, network }: Electrics,
  before: WiresStudied | undefined
): ReadonlyMap<Id, LoadedWire> {
  const { wires, points, nets } = connections;
  const seriesAmps = spreadSeriesCurrent(wires, points);
  const ac = network.circuits.ac.islandAt;
  const phaseAt = (slot: WireSlot, net: Net | undefined): number | null => {
    const end = slot.from ?? slot.to;
    const point = end && points.rootOf[end.number];
    const solution = point === undefined ? undefined : ac.get(point)?.solution;
    const volts = solution && point !== undefined ? solution.voltsAt(point) : null;
    if (solution?.origin != null || volts === null || !net?.acV) return null;
    // The network speaks of the same volts only where it comes to about as many.
    return agrees(net.acV.value, Math.abs(volts)) ? Math.sign(volts) : null;
  };
  const loaded = new Map<Id, LoadedWire>();
  let isAsBefore = before?.loaded.size === wires.slots.length;
  for (const slot of wires.slots) {
    const { id } = slot.wire;
    const own = alone.get(id);
    if (!own) continue;
    const groups = groupsOf(slot, nets);
    const onNets = groups.map((group) => netOf.get(group)).filter((net) => net !== undefined);
    const was = before?.loaded.get(id);
    const now = loadWire(
      {
        alone: own,
        nets: onNets,
        current: network.currents.get(id) ?? null,
        seriesAmps: seriesAmps.get(id) ?? null,
        phase: phaseAt(slot, onNets[0])
      },
      was
    );
    if (now !== was) isAsBefore = false;
    loaded.set(id, now);
  }
  return isAsBefore && before ? before.loaded : loaded;
}
