// The connected points as nets, numbered, each with its terminals and wires. What stands on a net
// is another step's work.
import type { ChassisDocument, Id, Wire } from '#document/index.ts';
import { joinPoints, joinsItsEnds, type JoinedPoints } from './join-points.ts';
import type { DocumentIndex } from './types.ts';

export interface NetGroup {
  readonly number: number;
  /** The smallest terminal key; a unit's metal that no terminal reaches has a name of its own. */
  readonly id: string;
  readonly isChassis: boolean;
  /** The unit whose separate metal belongs to the net. */
  readonly metalOf: Id | null;
  /** Terminal keys, sorted. */
  readonly terminals: readonly string[];
  /** Numbers of the same terminals in the index. */
  readonly points: readonly number[];
  /** Wires with an end here, in the document's order. */
  readonly wires: readonly Wire[];
}

export interface GroupedNets {
  readonly joined: JoinedPoints;
  readonly groups: readonly NetGroup[];
  /** The net's number of a point: terminals by their number in the index, then metal. */
  readonly netOfPoint: Int32Array;
}

interface OpenGroup {
  number: number;
  id: string;
  isChassis: boolean;
  metalOf: Id | null;
  terminals: string[];
  points: number[];
  wires: Wire[];
}

export function groupNets(document: ChassisDocument, index: DocumentIndex): GroupedNets {
  const joined = joinPoints(document, index);
  const groups: OpenGroup[] = [];
  const numberOfRoot = new Map<number, number>();
  const netOfPoint = new Int32Array(joined.points).fill(-1);
  const groupAt = (point: number): OpenGroup => {
    const root = joined.all.rootOf(point);
    const known = numberOfRoot.get(root);
    const group = known === undefined ? undefined : groups[known];
    if (group) {
      netOfPoint[point] = group.number;
      return group;
    }
    const number = groups.length;
    const made = {
      number,
      id: '',
      isChassis: false,
      metalOf: null,
      terminals: [],
      points: [],
      wires: []
    };
    groups.push(made);
    numberOfRoot.set(root, number);
    netOfPoint[point] = number;
    return made;
  };

  // In order of key, so that each net's list is sorted and its first key is its id.
  const byKey = [...index.terminals].sort((a, b) => (a.key < b.key ? -1 : a.key > b.key ? 1 : 0));
  for (const { key, number } of byKey) {
    const group = groupAt(number);
    group.terminals.push(key);
    group.points.push(number);
    if (group.id === '') group.id = key;
  }
  const chassis = groupAt(joined.chassisPoint);
  chassis.isChassis = true;
  if (chassis.id === '') chassis.id = 'the chassis';
  for (const unit of Object.values(document.units)) {
    if (unit.metal !== 'apart') continue;
    const point = joined.metalPointOf(unit.id);
    const group = point === undefined ? undefined : groupAt(point);
    if (!group) continue;
    group.metalOf ??= unit.id;
    if (group.id === '') group.id = `the metal of ${unit.id}`;
  }
  for (const wire of index.wires) {
    const nets = netNumbersOf(wire, index, netOfPoint);
    for (const net of nets) groups[net]?.wires.push(wire);
  }
  return { joined, groups, netOfPoint };
}

/** The nets that a wire's ends are on: none, one, or two for a wire that does not join them. */
export function netNumbersOf(
  wire: Wire,
  index: DocumentIndex,
  netOfPoint: Int32Array
): readonly number[] {
  const from = index.findAt(wire.from);
  const to = index.findAt(wire.to);
  const first = from && netOfPoint[from.number];
  const second = to && netOfPoint[to.number];
  if (first === undefined) return second === undefined ? [] : [second];
  if (second === undefined || second === first || joinsItsEnds(wire)) return [first];
  return [first, second];
}
