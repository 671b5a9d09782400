// Segments: the pieces of the wires' paths between two neighbouring supports or ends, and which wires
// share them. Wires that share a segment are a bundle there.
import type { ChassisDocument, Id, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import type { DocumentIndex } from './types.ts';

/** A stop on a wire's path. */
export type WayStop =
  | { readonly kind: 'support'; readonly id: Id }
  /** `key` as by `terminalKey`. */
  | { readonly kind: 'terminal'; readonly key: string };

export interface Segment {
  /** Its two stops' keys, smaller first: stable, and the same from whichever end a wire comes. */
  readonly id: string;
  readonly ends: readonly [WayStop, WayStop];
  /** In the order of the document. A wire that runs there twice is named once. */
  readonly wires: readonly Id[];
}

/** One text for one stop: ids hold no slash, so a support never shares a key with a terminal. */
export const stopKey = (stop: WayStop): string => (stop.kind === 'support' ? stop.id : stop.key);

/** The stops of a wire from its first end to its second. An end that nobody found is left out, and so
 *  is a support that is missing; a stop that follows itself counts once. */
export function listStops(
  document: ChassisDocument,
  index: Pick<DocumentIndex, 'findAt'>,
  wire: Wire
): readonly WayStop[] {
  const stops: WayStop[] = [];
  const add = (stop: WayStop): void => {
    const before = stops.at(-1);
    if (!before || stopKey(before) !== stopKey(stop)) stops.push(stop);
  };
  const from = index.findAt(wire.from);
  const to = index.findAt(wire.to);
  if (from) add({ kind: 'terminal', key: from.key });
  for (const id of wire.route?.supports ?? []) {
    if (findElement(document.supports, id)) add({ kind: 'support', id });
  }
  if (to) add({ kind: 'terminal', key: to.key });
  return stops;
}

/** Every segment that a wire runs along, in the order in which the document's wires first use them. */
export function listSegments(document: ChassisDocument, index: DocumentIndex): readonly Segment[] {
  const segments = new Map<string, { ends: readonly [WayStop, WayStop]; wires: Set<Id> }>();
  for (const wire of index.wires) {
    const stops = listStops(document, index, wire);
    stops.slice(1).forEach((here, n) => {
      const before = stops[n];
      if (!before) return;
      const ends =
        stopKey(before) < stopKey(here) ? ([before, here] as const) : ([here, before] as const);
      const id = `${stopKey(ends[0])} ${stopKey(ends[1])}`;
      const known = segments.get(id);
      if (known) known.wires.add(wire.id);
      else segments.set(id, { ends, wires: new Set([wire.id]) });
    });
  }
  return [...segments].map(([id, { ends, wires }]) => ({ id, ends, wires: [...wires] }));
}
