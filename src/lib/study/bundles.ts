// Which wires lie side by side: those that one support holds, those that run from one support to the next
// stop together, and the conductors of one cable.
import type { Id } from '#document/index.ts';
import { listAt, type Lists } from './lists.ts';
import { changedKeys, keepItems, sameItems } from './same.ts';
import { stopKey, type WayStop } from './segments.ts';
import type { Bundle } from './types.ts';
import type { AloneOf, WireAlone } from './wire-alone.ts';

export interface Bundles {
  readonly all: readonly Bundle[];
  readonly of: ReadonlyMap<Id, readonly Bundle[]>;
}

/** Bundles of two and more wires. Those that came out as before are the same objects. */
export function gatherBundles(
  alone: AloneOf,
  before?: { readonly alone: AloneOf; readonly bundles: Bundles; readonly isSameOrder: boolean }
): Bundles {
  if (before?.isSameOrder === true && lieAsBefore(before.alone, alone)) return before.bundles;
  const wiresAt: Lists<string, Id> = new Map();
  const kinds = new Map<string, Pick<Bundle, 'support' | 'cable'>>();
  for (const [id, { stops, slot }] of alone) {
    const { cable } = slot.wire;
    for (const key of stretchesOf(stops, kinds)) listAt(wiresAt, key).push(id);
    if (cable === undefined) continue;
    kinds.set(`cable:${cable}`, { support: null, cable });
    listAt(wiresAt, `cable:${cable}`).push(id);
  }
  const known = new Map(before?.bundles.all.map((bundle) => [bundle.id, bundle]));
  const all: Bundle[] = [];
  const of: Lists<Id, Bundle> = new Map();
  for (const [id, wires] of wiresAt) {
    if (wires.length < 2) continue;
    const was = known.get(id);
    const kind = kinds.get(id) ?? { support: null, cable: null };
    const bundle = was && sameItems(was.wires, wires) ? was : { id, ...kind, wires };
    all.push(bundle);
    for (const wire of wires) listAt(of, wire).push(bundle);
  }
  const kept = new Map<Id, readonly Bundle[]>();
  for (const [wire, bundles] of of)
    kept.set(wire, keepItems(before?.bundles.of.get(wire), bundles));
  return { all: keepItems(before?.bundles.all, all), of: kept };
}

/** Every wire takes the supports that it took, in the cable that it was in. */
function lieAsBefore(before: AloneOf, now: AloneOf): boolean {
  for (const id of changedKeys(before, now)) {
    const [was, wire] = [before.get(id), now.get(id)];
    if (!was || !wire || was.slot.wire.cable !== wire.slot.wire.cable) return false;
    const isSame = was.stops === wire.stops || (isStraight(was) && isStraight(wire));
    if (!isSame) return false;
  }
  return true;
}

/** From end to end past no support: such a wire is in no bundle but its cable. */
const isStraight = ({ stops }: WireAlone): boolean =>
  stops.every(({ kind }) => kind === 'terminal');

/** Keys of the supports and of the stretches between them that a wire takes, each once. */
function stretchesOf(
  stops: readonly WayStop[],
  kinds: Map<string, Pick<Bundle, 'support' | 'cable'>>
): ReadonlySet<string> {
  const keys = new Set<string>();
  stops.forEach((stop, n) => {
    if (stop.kind === 'support') {
      keys.add(stop.id);
      kinds.set(stop.id, { support: stop.id, cable: null });
    }
    const next = stops[n + 1];
    // Two wires that merely join the same two terminals are no bundle.
    if (!next || (stop.kind === 'terminal' && next.kind === 'terminal')) return;
    const [a, b] = [stopKey(stop), stopKey(next)];
    keys.add(a < b ? `${a} ${b}` : `${b} ${a}`);
  });
  return keys;
}
