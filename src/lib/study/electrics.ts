// The second leg of a study: what stands on the nets and what flows in the wires.
import type { Id, Policy } from '#document/index.ts';
import type { Connections } from './connections.ts';
import { makeRoleReader, type RoleReader } from './function-words.ts';
import { buildNets, type NetOf } from './build-nets.ts';
import { solveChassis, type SolvedNetwork } from './network/solve-chassis.ts';
import { policyOf } from './policy-of.ts';
import { findPotentials, listDeclared, type Potentials } from './potentials.ts';
import { listAlone, type AloneOf } from './wire-alone.ts';

export interface Electrics {
  readonly connections: Connections;
  readonly policy: Policy;
  readonly rolesOf: RoleReader;
  readonly alone: AloneOf;
  readonly declared: Potentials;
  readonly potentials: Potentials;
  readonly network: SolvedNetwork;
  readonly netOf: NetOf;
}

export function energise(connections: Connections, before?: Electrics): Electrics {
  const { document, parts, wires, points, nets } = connections;
  const policy = policyOf(document, before?.policy);
  const rolesOf = before?.rolesOf ?? makeRoleReader();
  const ground = { document, policy };
  const groundBefore = before && { document: before.connections.document, policy: before.policy };
  const alone = listAlone(
    wires.slots,
    ground,
    rolesOf,
    before && groundBefore && { ground: groundBefore, alone: before.alone }
  );
  const wireBefore = (id: Id) => before?.connections.wires.slotById.get(id)?.wire;
  const declared = listDeclared(
    document,
    nets.groups,
    (id) => wireBefore(id) !== wires.slotById.get(id)?.wire,
    before?.declared
  );
  const elements = connections.elements.all;
  const isAsBefore =
    before?.declared === declared &&
    before.policy === policy &&
    before.connections.elements.all === elements;
  const potentials = isAsBefore
    ? before.potentials
    : findPotentials(declared, elements, policy, before?.potentials);
  const ohmsOf = (id: Id) => alone.get(id)?.ohms ?? null;
  const network = solveChassis(
    { wires, points, nets, declared, elements, potentials, policy, ohmsOf },
    before?.network
  );
  const findEntry = (key: string) => parts.terminalByKey.get(key);
  const netOf = buildNets(
    {
      document,
      groups: nets.groups,
      potentials,
      figures: network.figures,
      elements,
      rolesOf,
      findEntry
    },
    before?.netOf
  );
  return {
    connections,
    policy,
    rolesOf,
    alone,
    declared,
    potentials,
    network,
    netOf
  };
}
