// The direct-current circuit of a document, for the network solver: nets as nodes, the elements of
// the parts as branches. Windings and heaters are mere joins for dc.
import { isKnownElement, sortByOrder, type ChassisDocument } from '#document/index.ts';
import type { Branch, Circuit } from '#physics/network/index.ts';
import { terminalKey, type Study } from '#study/index.ts';

export const toDcCircuit = (document: ChassisDocument, study: Study): Circuit => {
  const branches: Branch[] = [];
  for (const part of sortByOrder(document.parts)) {
    const nodeOf = (terminal: string | undefined): string =>
      terminal === undefined
        ? 'metal'
        : (study.netOf.get(terminalKey(part.id, terminal)) ?? terminalKey(part.id, terminal));
    for (const element of Object.values(part.elements ?? {})) {
      if (!isKnownElement(element)) continue;
      const ends = {
        id: `${part.reference} ${element.id}`,
        from: nodeOf(element.from),
        to: nodeOf(element.to)
      };
      if (element.kind === 'resistor') {
        branches.push({ kind: 'resistance', ...ends, ohms: element.ohms });
      } else if (element.kind === 'load') {
        branches.push({ kind: 'load', ...ends, amps: element.amps });
      } else if (element.kind === 'source') {
        const volts = element.current === 'dc' ? element.volts : 0;
        branches.push({ kind: 'source', ...ends, from: ends.to, to: ends.from, volts, ohms: 0 });
      }
    }
  }
  const chassis = [...study.nets.values()].filter((net) => net.isChassis).map((net) => net.id);
  return { branches, reference: ['metal', ...chassis] };
};
