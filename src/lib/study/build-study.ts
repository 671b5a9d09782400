// The study as a line of steps, each a function of what came before it: the document's index, what
// is joined, the nets and their volts, then wire by wire what it carries, needs and measures.
import { defaultPolicy, type ChassisDocument, type Id, type Policy } from '#document/index.ts';
import { buildNets } from './build-nets.ts';
import { makeTubeFinder, placeElements } from './circuit-elements.ts';
import { makeRoleReader } from './function-words.ts';
import { groupNets, netNumbersOf } from './group-nets.ts';
import { indexDocument } from './index-document.ts';
import { spreadSeriesCurrent } from './series-current.ts';
import { studyWire, type WireContext } from './study-wire.ts';
import type { Net, Study, WireStudy } from './types.ts';
import { findUnitRails } from './unit-rails.ts';

/** The policy of a document: the defaults with what the document says otherwise. */
export const policyOf = (document: ChassisDocument): Policy => {
  const given = Object.entries(document.policy).filter(([, value]) => value !== undefined);
  return { ...defaultPolicy, ...Object.fromEntries(given) };
};

/** What can be known of a document. Pure; takes any document that the schema takes, with references
 *  to missing elements too, and never throws. */
export function buildStudy(document: ChassisDocument): Study {
  const policy = policyOf(document);
  const rolesOf = makeRoleReader();
  const findTube = makeTubeFinder();
  const index = indexDocument(document);
  const grouped = groupNets(document, index);
  const elements = placeElements(index, grouped, findTube);
  const allNets = buildNets(document, index, grouped, elements, rolesOf, policy);
  const seriesAmps = spreadSeriesCurrent(index, grouped.joined.withoutWires);
  const rails = findUnitRails(allNets, index, policy);
  const context: WireContext = { document, policy, index, rails, rolesOf, findTube };

  const wires = new Map<Id, WireStudy>();
  for (const wire of index.wires) {
    const nets = netNumbersOf(wire, index, grouped.netOfPoint)
      .map((number) => allNets[number])
      .filter((net) => net !== undefined);
    wires.set(wire.id, studyWire(wire, nets, seriesAmps.get(wire.id) ?? null, context));
  }
  const nets = new Map<string, Net>();
  for (const net of allNets) if (net.terminals.length > 0) nets.set(net.id, net);
  const netOf = new Map<string, string>();
  for (const net of nets.values()) for (const key of net.terminals) netOf.set(key, net.id);
  const { withoutWires, chassisPoint } = grouped.joined;
  const pointOf = new Map<string, number>();
  for (const { key, number } of index.terminals) pointOf.set(key, withoutWires.rootOf(number));
  return {
    document,
    policy,
    index,
    nets,
    netOf,
    pointOf,
    chassisPoint: withoutWires.rootOf(chassisPoint),
    wires
  };
}
