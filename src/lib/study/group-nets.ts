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
  const touched = before && findTouched(points, layout, before);
  const openAt = joinByWires(points, layout, touched);
  const { inKeyOrder } = points.source.parts;
  // In order of key, so that each net's list is sorted and its first key is its id.
  for (const number of inKeyOrder) {
    const group = openAt[number];
    const key = points.keys[number] ?? '';
    if (!group) continue;
    if (group.id === '') group.id = key;
    group.terminals.push(key);
    group.points.push(number);
  }
  nameMetals(points, openAt);
  layout.ids.forEach((id, n) => {
    const first = openAt[layout.numbers[3 * n] ?? -1];
    const second = openAt[layout.numbers[3 * n + 1] ?? -1];
    const joins = layout.numbers[3 * n + 2] === 1;
    first?.wires.push(id);
    if (second && second !== first && (!first || !joins)) second.wires.push(id);
  });
  const closed = new Map<OpenGroup | undefined, NetGroup>();
  for (const group of openAt) {
    if (group && !closed.has(group))
      closed.set(group, keepGroup(before?.byId.get(group.id), group));
  }
  const groupAt: NetGroup[] = [];
  openAt.forEach((group, point) => {
    const now = closed.get(group) ?? before?.groupAt[point];
    if (now) groupAt[point] = now;
  });
  const groups = inOrder(groupAt, points);
  return {
    groups: keepItems(before?.groups, groups),
    byId: new Map(groups.map((group) => [group.id, group])),
    groupAt: keepItems(before?.groupAt, groupAt),
    source: { points, layout }
  };
}

/** Each group once: by its first terminal, then those of metal that no terminal reaches. */
function inOrder(groupAt: readonly NetGroup[], points: Points): readonly NetGroup[] {
  const groups: NetGroup[] = [];
  for (const number of points.source.parts.inKeyOrder) {
    const group = groupAt[number];
    if (group?.points[0] === number) groups.push(group);
  }
  for (const point of [points.chassis, ...points.metalApart.values()]) {
    const group = groupAt[point];
    if (group?.points.length === 0 && !groups.includes(group)) groups.push(group);
  }
  return groups;
}

/** By point, 1 where its net was or is that of a wire which runs elsewhere now; undefined where all nets
 *  have to be made again. */
function findTouched(
  points: Points,
  layout: WireLayout,
  { source, groupAt }: GroupedNets
): Uint8Array | undefined {
  const isSameMetal =
    source.points.keys === points.keys &&
    source.points.rootOf === points.rootOf &&
    source.points.metalApart === points.metalApart;
  if (!isSameMetal || source.layout.ids !== layout.ids) return undefined;
  const groups = new Set<NetGroup>();
  const [was, now] = [source.layout.numbers, layout.numbers];
  for (let n = 0; n < now.length; n += 3) {
    if (was[n] === now[n] && was[n + 1] === now[n + 1] && was[n + 2] === now[n + 2]) continue;
    for (const point of [was[n], was[n + 1], now[n], now[n + 1]]) {
      const group = groupAt[point ?? -1];
      if (group) groups.add(group);
    }
  }
  const touched = new Uint8Array(groupAt.length);
  groupAt.forEach((group, point) => {
    if (groups.has(group)) touched[point] = 1;
  });
  return touched;
}

const isSameGround = (was: GroupedNets['source'], points: Points, layout: WireLayout): boolean =>
  was.layout === layout &&
  was.points.keys === points.keys &&
  was.points.rootOf === points.rootOf &&
  was.points.metalApart === points.metalApart;

/** By point, the group that it is in, empty as yet; undefined where it is not touched.
 *  @param touched 1 for points to look at; all where it is left out */
function joinByWires(
  { rootOf }: Points,
  { numbers }: WireLayout,
  touched: Uint8Array | undefined
): readonly (OpenGroup | undefined)[] {
  const isTouched = (point: number): boolean => touched === undefined || touched[point] === 1;
  const sets = new DisjointSets(rootOf.length);
  rootOf.forEach((root, point) => {
    if (root !== point && isTouched(point)) sets.join(root, point);
  });
  for (let n = 0; n < numbers.length; n += 3) {
    const from = numbers[n] ?? -1;
    const to = numbers[n + 1] ?? -1;
    if (numbers[n + 2] === 1 && from >= 0 && to >= 0 && isTouched(from)) sets.join(from, to);
  }
  const groupOfRoot = new Map<number, OpenGroup>();
  return Array.from(rootOf, (_, point) => {
    if (!isTouched(point)) return undefined;
    const root = sets.rootOf(point);
    let group = groupOfRoot.get(root);
    if (!group) {
      group = { id: '', isChassis: false, metalOf: null, terminals: [], points: [], wires: [] };
      groupOfRoot.set(root, group);
    }
    return group;
  });
}

function nameMetals(points: Points, openAt: readonly (OpenGroup | undefined)[]): void {
  const chassis = openAt[points.chassis];
  if (chassis) {
    chassis.isChassis = true;
    if (chassis.id === '') chassis.id = 'the chassis';
  }
  for (const [unit, point] of points.metalApart) {
    const group = openAt[point];
    if (!group) continue;
    group.metalOf ??= unit;
    if (group.id === '') group.id = `the metal of ${unit}`;
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
