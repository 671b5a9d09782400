// The first leg of a study: what there is, and what is connected with what.
import type { ChassisDocument } from '#document/index.ts';
import { placeElements, type PlacedElements } from './circuit-elements.ts';
import { groupNets, type GroupedNets } from './group-nets.ts';
import { indexDocument } from './index-document.ts';
import { indexParts, type PartsIndex } from './index-parts.ts';
import { indexWires, type WiresIndex } from './index-wires.ts';
import { joinPoints, type Points } from './points.ts';
import type { DocumentIndex } from './types.ts';
import { layoutWires, type WireLayout } from './wire-layout.ts';

export interface Connections {
  readonly document: ChassisDocument;
  readonly parts: PartsIndex;
  readonly wires: WiresIndex;
  readonly index: DocumentIndex;
  readonly points: Points;
  readonly layout: WireLayout;
  readonly nets: GroupedNets;
  readonly elements: PlacedElements;
}

export function connect(document: ChassisDocument, before?: Connections): Connections {
  const parts = indexParts(document.parts, before?.parts);
  const wires = indexWires(document.wires, parts, before?.wires);
  const points = joinPoints(parts, document.units, before?.points);
  const layout = layoutWires(wires, before?.layout);
  const nets = groupNets(points, layout, before?.nets);
  return {
    document,
    parts,
    wires,
    index: indexDocument(document, wires, before),
    points,
    layout,
    nets,
    elements: placeElements(points, nets, before?.elements)
  };
}
