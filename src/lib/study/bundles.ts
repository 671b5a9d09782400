// Which wires lie side by side: those that one support holds, and those that run from one stop to the
// next together.
import type { Id } from '#document/index.ts';
import { listAt, type Lists } from './lists.ts';
import { keepItems } from './same.ts';
import { stopKey, type WayStop } from './segments.ts';
import type { Bundle } from './types.ts';

export interface Bundles {
  readonly all: readonly Bundle[];
  readonly of: ReadonlyMap<Id, readonly Bundle[]>;
}

/** Bundles of two and more wires.
 *  @param stopsOf by wire: its stops from end to end, support by support
 *  @param before bundles that came out as before are the same objects */
export function gatherBundles(
  stopsOf: ReadonlyMap<Id, readonly WayStop[]>,
  before?: Bundles
): Bundles {
  const wiresAt: Lists<string, Id> = new Map();
  const supports = new Set<string>();
  for (const [wire, stops] of stopsOf) {
    for (const id of stretchesOf(stops, supports)) listAt(wiresAt, id).push(wire);
  }
  const known = new Map(before?.all.map((bundle) => [bundle.id, bundle]));
  const all: Bundle[] = [];
  const of: Lists<Id, Bundle> = new Map();
  for (const [id, wires] of wiresAt) {
    if (wires.length < 2) continue;
    const was = known.get(id);
    const bundle =
      was && keepItems(was.wires, wires) === was.wires
        ? was
        : { id, support: supports.has(id) ? id : null, wires };
    all.push(bundle);
    for (const wire of wires) listAt(of, wire).push(bundle);
  }
  const kept = new Map<Id, readonly Bundle[]>();
  for (const [wire, bundles] of of) kept.set(wire, keepItems(before?.of.get(wire), bundles));
  return { all: keepItems(before?.all, all), of: kept };
}

/** Ids of the supports and of the stretches between them that a wire takes, each once. */
function stretchesOf(stops: readonly WayStop[], supports: Set<string>): ReadonlySet<string> {
  const ids = new Set<string>();
  stops.forEach((stop, n) => {
    if (stop.kind === 'support') {
      ids.add(stop.id);
      supports.add(stop.id);
    }
    const next = stops[n + 1];
    if (!next) return;
    const [a, b] = [stopKey(stop), stopKey(next)];
    ids.add(a < b ? `${a} ${b}` : `${b} ${a}`);
  });
  return ids;
}
