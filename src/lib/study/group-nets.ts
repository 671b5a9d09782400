// The points that wires join, gathered into nets with their terminals and wires. What stands on a net
// is another step's work. A net that came out as before is the same object as before.
import type { Id } from '#document/index.ts';
import { DisjointSets } from './disjoint-sets.ts';
import type { WireSlot } from './index-wires.ts';
import { joinsItsEnds, type Points } from './points.ts';
import { keepItems, sameItems } from './same.ts';
import type { WireLayout } from './wire-layout.ts';

export interface NetGroup {
  /** The smallest terminal key; a unit's metal that no terminal reaches has a name of its own. */
  readonly id: string;
  readonly isChassis: boolean;
  /** The unit whose separate metal belongs to the net. */
  readonly metalOf: Id | null;
  /** Terminal keys, sorted. */
  readonly terminals: readonly string[];
  /** Numbers of the same terminals. */
  readonly points: readonly number[];
  /** Wires with an end here, in the document's order. */
  readonly wires: readonly Id[];
}

export interface GroupedNets {
  /** In the order of their ids; those without terminals last. */
  readonly groups: readonly NetGroup[];
  readonly byId: ReadonlyMap<string, NetGroup>;
  /** By point, terminals and metals alike. */
  readonly groupAt: readonly NetGroup[];
  readonly source: { readonly points: Points; readonly layout: WireLayout };
}

interface OpenGroup {
  id: string;
  isChassis: boolean;
  metalOf: Id | null;
  terminals: string[];
  points: number[];
  wires: Id[];
}

export function groupNets(points: Points, layout: WireLayout, before?: GroupedNets): GroupedNets {
  if (before && isSameGround(before.source, points, layout)) return before;
  const openAt = joinByWires(points, layout);
  const { inKeyOrder } = points.source.parts;
  const open = new Set<OpenGroup>();
  // In order of key, so that each net's list is sorted and its first key is its id.
  for (const number of inKeyOrder) {
    const group = openAt[number];
    const key = points.keys[number] ?? '';
    if (!group) continue;
    if (group.id === '') group.id = key;
    group.terminals.push(key);
    group.points.push(number);
    open.add(group);
  }
  nameMetals(points, openAt, open);
  layout.ids.forEach((id, n) => {
    const first = openAt[layout.numbers[3 * n] ?? -1];
    const second = openAt[layout.numbers[3 * n + 1] ?? -1];
    const joins = layout.numbers[3 * n + 2] === 1;
    first?.wires.push(id);
    if (second && second !== first && (!first || !joins)) second.wires.push(id);
  });
  const byId = new Map<string, NetGroup>();
  const closed = new Map<OpenGroup, NetGroup>();
  for (const group of open) {
    const kept = keepGroup(before?.byId.get(group.id), group);
    byId.set(group.id, kept);
    closed.set(group, kept);
  }
  const groupAt = openAt.map((group) => closed.get(group) ?? group);
  return {
    groups: keepItems(before?.groups, [...byId.values()]),
    byId,
    groupAt: keepItems(before?.groupAt, groupAt),
    source: { points, layout }
  };
}

const isSameGround = (was: GroupedNets['source'], points: Points, layout: WireLayout): boolean =>
  was.layout === layout &&
  was.points.keys === points.keys &&
  was.points.rootOf === points.rootOf &&
  was.points.metalApart === points.metalApart;

/** By point, the group that it is in: empty as yet. */
function joinByWires({ rootOf }: Points, { numbers }: WireLayout): readonly OpenGroup[] {
  const sets = new DisjointSets(rootOf.length);
  rootOf.forEach((root, point) => {
    if (root !== point) sets.join(root, point);
  });
  for (let n = 0; n < numbers.length; n += 3) {
    const from = numbers[n] ?? -1;
    const to = numbers[n + 1] ?? -1;
    if (numbers[n + 2] === 1 && from >= 0 && to >= 0) sets.join(from, to);
  }
  const groupOfRoot = new Map<number, OpenGroup>();
  return Array.from(rootOf, (_, point) => {
    const root = sets.rootOf(point);
    let group = groupOfRoot.get(root);
    if (!group) {
      group = { id: '', isChassis: false, metalOf: null, terminals: [], points: [], wires: [] };
      groupOfRoot.set(root, group);
    }
    return group;
  });
}

function nameMetals(points: Points, openAt: readonly OpenGroup[], open: Set<OpenGroup>): void {
  const chassis = openAt[points.chassis];
  if (chassis) {
    chassis.isChassis = true;
    if (chassis.id === '') chassis.id = 'the chassis';
    open.add(chassis);
  }
  for (const [unit, point] of points.metalApart) {
    const group = openAt[point];
    if (!group) continue;
    group.metalOf ??= unit;
    if (group.id === '') group.id = `the metal of ${unit}`;
    open.add(group);
  }
}

const keepGroup = (before: NetGroup | undefined, now: NetGroup): NetGroup =>
  before &&
  before.isChassis === now.isChassis &&
  before.metalOf === now.metalOf &&
  sameItems(before.terminals, now.terminals) &&
  sameItems(before.points, now.points) &&
  sameItems(before.wires, now.wires)
    ? before
    : now;

/** The nets that a wire's ends are on: none, one, or two for a wire that does not join them. */
export function groupsOf(
  { wire, from, to }: WireSlot,
  { groupAt }: GroupedNets
): readonly NetGroup[] {
  const first = from && groupAt[from.number];
  const second = to && groupAt[to.number];
  if (!first) return second ? [second] : [];
  if (!second || second === first || joinsItsEnds(wire)) return [first];
  return [first, second];
}
