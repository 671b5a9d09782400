// The electrical elements of all parts, with the nets that they stand between. A tube whose heater
// nobody drew has the heater that the handbook gives its type.
import type { Element, Part } from '#document/index.ts';
import { isKnownElement } from '#document/part-schema.ts';
import { findTubeType, heaterElements, type TubeType } from '#handbook/tube-types.ts';
import type { GroupedNets } from './group-nets.ts';
import { terminalKey } from './terminal-key.ts';
import type { DocumentIndex } from './types.ts';

/** What the sums read of an element; a handbook row gives heaters only. */
export type ElementValues =
  Element | { readonly kind: 'heater'; readonly volts: number; readonly amps: number };

export interface PlacedElement {
  readonly part: Part;
  readonly values: ElementValues;
  /** Net numbers. */
  readonly from: number;
  readonly to: number;
  /** True where the handbook gave it and not the document. */
  readonly fromHandbook: boolean;
}

/** The handbook's rows for the tubes of a document, looked up once per type. */
export function makeTubeFinder(): (part: Part) => TubeType | null {
  const known = new Map<string, TubeType | null>();
  return ({ kind, type }) => {
    if (type === undefined || (kind !== 'tube' && kind !== 'picture tube')) return null;
    const before = known.get(type);
    if (before !== undefined) return before;
    const found = findTubeType(type);
    known.set(type, found);
    return found;
  };
}

/** Elements whose terminals all exist; those of unknown kinds are left out. */
export function placeElements(
  index: DocumentIndex,
  nets: GroupedNets,
  findTube: (part: Part) => TubeType | null
): PlacedElement[] {
  const placed: PlacedElement[] = [];
  const netAt = (part: Part, terminal: string): number | undefined => {
    const number = index.terminalByKey.get(terminalKey(part.id, terminal))?.number;
    return number === undefined ? undefined : nets.netOfPoint[number];
  };
  const metalNet = (part: Part): number | undefined => {
    const point = nets.joined.metalPointOf(part.unit);
    return point === undefined ? undefined : nets.netOfPoint[point];
  };
  for (const part of index.parts) {
    let hasHeater = false;
    for (const element of Object.values(part.elements ?? {})) {
      if (!isKnownElement(element)) continue;
      if (element.kind === 'heater') hasHeater = true;
      const from = netAt(part, element.from);
      const to = element.to === undefined ? metalNet(part) : netAt(part, element.to);
      // A pulse stands at its first terminal, whatever it is counted against.
      const end = to ?? (element.kind === 'pulse' ? from : undefined);
      if (from === undefined || end === undefined) continue;
      placed.push({ part, values: element, from, to: end, fromHandbook: false });
    }
    const type = hasHeater ? null : findTube(part);
    if (!type) continue;
    const terminalNamed = (name: string) =>
      index.terminalsOf.get(part.id)?.find((terminal) => terminal.name === name);
    for (const { from, to, volts, amps } of heaterElements(type)) {
      const first = terminalNamed(from);
      const last = terminalNamed(to);
      const a = first && netAt(part, first.id);
      const b = last && netAt(part, last.id);
      if (a === undefined || b === undefined) continue;
      const values = { kind: 'heater', volts, amps } as const;
      placed.push({ part, values, from: a, to: b, fromHandbook: true });
    }
  }
  return placed;
}
