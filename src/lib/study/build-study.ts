// The study of a document in three legs: what is connected, what stands on it and flows in it, what each
// wire needs. Each leg looks at what it was made from before, so that the study after an edit costs
// no more than what the edit can have changed.
import type { ChassisDocument, Id } from '#document/index.ts';
import { connect } from './connections.ts';
import type { NetOf } from './build-nets.ts';
import { energise, type Electrics } from './electrics.ts';
import { reportNetwork, type NetworkStudy } from './network/network-study.ts';
import { changedKeys, patchMap } from './same.ts';
import type { Net, Study, WireStudy } from './types.ts';
import { studyWires, type WiresStudied } from './wires-studied.ts';

/** What can be known of a document. Pure; takes any document that the schema takes, with references
 *  to missing elements too, and never throws. */
export const buildStudy = (document: ChassisDocument): Study => continueStudy(document, undefined);

/** The study of a document, from that of another: as a rule of the same one before an edit. The answer
 *  is that of `buildStudy`; what did not change is the very same object as in the study before. */
export const updateStudy = (previous: Study, document: ChassisDocument): Study =>
  previous.document === document ? previous : continueStudy(document, workOf.get(previous));

/** A study that remembers the last one: for whoever asks again after every edit. */
export function makeStudier(): (document: ChassisDocument) => Study {
  let last: Study | undefined;
  return (document) => (last = last ? updateStudy(last, document) : buildStudy(document));
}

interface Work {
  readonly last: WiresStudied;
  readonly study: Study;
}

/** How a study came about, for the next one. */
const workOf = new WeakMap<Study, Work>();

function continueStudy(document: ChassisDocument, before: Work | undefined): Study {
  const { last: was, study: old } = before ?? {};
  const connections = connect(document, was?.electrics.connections);
  const electrics = energise(connections, was?.electrics);
  const last = studyWires(electrics, was);
  const { points, parts, index, nets: grouped } = connections;
  const wires = studiesOf(last, before);
  const sameNets = was?.electrics.netOf === electrics.netOf && old;
  const nets = sameNets ? sameNets.nets : netsById(electrics.netOf);
  const sameGroups = was?.electrics.connections.nets === grouped && old;
  const samePoints = was?.electrics.connections.points.rootOf === points.rootOf && old;
  const sameNetwork =
    sameNets &&
    sameGroups &&
    samePoints &&
    was.electrics.network.circuits === electrics.network.circuits;
  const study: Study = {
    document,
    policy: electrics.policy,
    index,
    nets,
    netOf: sameGroups ? sameGroups.netOf : netOfTerminals(nets, samePoints ? old : undefined),
    pointOf:
      samePoints && was.electrics.connections.parts.keys === parts.keys
        ? samePoints.pointOf
        : new Map(parts.keys.map((key, number) => [key, points.rootOf[number] ?? number])),
    chassisPoint: points.rootOf[points.chassis] ?? points.chassis,
    wires,
    elements: connections.elements.all,
    network: sameNetwork ? old.network : reportOn(electrics),
    bundles: last.bundles.all,
    bundlesOf: last.bundles.of
  };
  workOf.set(study, { last, study });
  return study;
}

function studiesOf(
  { studied, electrics }: WiresStudied,
  before: Work | undefined
): ReadonlyMap<Id, WireStudy> {
  const { ids } = electrics.connections.layout;
  if (before && before.last.electrics.connections.layout.ids === ids) {
    const changed = changedKeys(before.last.studied, studied);
    return patchMap(before.study.wires, changed, (id) => studied.get(id)?.study);
  }
  return new Map([...studied].map(([id, { study }]) => [id, study]));
}

function netsById(netOf: NetOf): ReadonlyMap<string, Net> {
  const nets = new Map<string, Net>();
  for (const net of netOf.values()) if (net.terminals.length > 0) nets.set(net.id, net);
  return nets;
}

function reportOn({ connections, network, netOf }: Electrics): NetworkStudy {
  const { points, nets, elements } = connections;
  return reportNetwork(network, points, nets, elements.all, (point) => {
    const group = nets.groupAt[point];
    return (group && netOf.get(group)?.name) ?? 'one of its own points';
  });
}

/** @param before a study of the same terminals */
function netOfTerminals(
  nets: ReadonlyMap<string, Net>,
  before: Study | undefined
): ReadonlyMap<string, string> {
  const moved = new Map<string, string>();
  for (const { id, terminals } of nets.values()) {
    if (before?.nets.get(id)?.terminals === terminals) continue;
    for (const key of terminals) moved.set(key, id);
  }
  return before ? patchMap(before.netOf, moved.keys(), (key) => moved.get(key)) : moved;
}
