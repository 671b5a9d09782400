// The second leg of a study: what stands on the nets and what flows in the wires.
import type { Policy } from '#document/index.ts';
import type { Connections } from './connections.ts';
import { windingsByColour } from './lead-windings.ts';
import { makeRoleReader, type RoleReader } from './function-words.ts';
import { buildNets, type NetOf, type NetsInputs } from './build-nets.ts';
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
  readonly netsFrom: NetsInputs;
  readonly netOf: NetOf;
}

export function energise(connections: Connections, before?: Electrics): Electrics {
  const { document, parts, wires, changes, layout, points, nets } = connections;
  const policy = policyOf(document, before?.policy);
  const rolesOf = before?.rolesOf ?? makeRoleReader();
  const ground = { document, policy };
  const alone = listAlone(
    connections,
    ground,
    rolesOf,
    before && {
      ground: { document: before.connections.document, policy: before.policy },
      alone: before.alone,
      ids: before.connections.layout.ids
    }
  );
  const { touched } = changes;
  const declared = listDeclared(document, nets.groups, touched, before?.declared);
  const elements = connections.elements.all;
  const isAsBefore =
    before?.declared === declared &&
    before.policy === policy &&
    before.connections.elements.all === elements &&
    before.connections.points === points &&
    before.connections.nets === nets;
  const potentials = isAsBefore
    ? before.potentials
    : findPotentials(
        declared,
        elements,
        windingsByColour(points, nets.groupAt),
        policy,
        before?.potentials
      );
  const network = solveChassis(
    { wires, layout, points, nets, declared, elements, potentials, policy, alone },
    before?.network
  );
  const figures = network.figures;
  const netsFrom = { document, parts, nets, potentials, figures, elements, rolesOf };
  const netOf = buildNets(
    netsFrom,
    touched,
    before && { inputs: before.netsFrom, netOf: before.netOf }
  );
  return {
    connections,
    policy,
    rolesOf,
    alone,
    declared,
    potentials,
    network,
    netsFrom,
    netOf
  };
}
