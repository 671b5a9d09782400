// The first leg of a study: what there is, and what is connected with what.
import type { ChassisDocument } from '#document/index.ts';
import { placeElements, type PlacedElements } from './circuit-elements.ts';
import { groupNets, type GroupedNets } from './group-nets.ts';
import { indexDocument } from './index-document.ts';
import { indexParts, type PartsIndex } from './index-parts.ts';
import { compareWires, indexWires, type WireChanges, type WiresIndex } from './index-wires.ts';
import { joinPoints, type Points } from './points.ts';
import type { DocumentIndex } from './types.ts';
import { layoutWires, type WireLayout } from './wire-layout.ts';

export interface Connections {
  readonly document: ChassisDocument;
  readonly parts: PartsIndex;
  readonly wires: WiresIndex;
  /** Since the study before: what is new against it. */
  readonly changes: WireChanges;
  readonly index: DocumentIndex;
  readonly points: Points;
  readonly layout: WireLayout;
  readonly nets: GroupedNets;
  readonly elements: PlacedElements;
}

export function connect(document: ChassisDocument, before?: Connections): Connections {
  const parts = indexParts(document.parts, before?.parts);
  const wires = indexWires(document.wires, parts, before?.wires);
  const changes = compareWires(wires, before?.wires);
  const points = joinPoints(parts, document.units, before?.points);
  const layout = layoutWires(wires, changes.touched, before);
  const nets = groupNets(points, layout, before?.nets);
  return {
    document,
    parts,
    wires,
    changes,
    index: indexDocument(document, wires, changes, before),
    points,
    layout,
    nets,
    elements: placeElements(points, nets, before?.elements)
  };
}
