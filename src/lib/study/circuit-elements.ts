// The electrical elements of all parts, with the points and nets that they stand between. A tube whose
// heater nobody drew has the heater that the handbook gives its type, and a resistor or capacitor of
// which only the value is written down is one of that value.
import type { Element, Part } from '#document/index.ts';
import { isKnownElement } from '#document/part-schema.ts';
import { findTubeType, heaterElements, type TubeType } from '#handbook/tube-types.ts';
import type { GroupedNets, NetGroup } from './group-nets.ts';
import { metalPointOf, type Points } from './points.ts';
import { sameFields } from './same.ts';
import { terminalKey } from './terminal-key.ts';
import type { TerminalEntry } from './types.ts';
import { elementFromValue } from './element-from-value.ts';

interface Heater {
  readonly kind: 'heater';
  readonly volts: number;
  readonly amps: number;
}
interface Resistor {
  readonly kind: 'resistor';
  readonly ohms: number;
  readonly watts?: number;
}
interface Capacitor {
  readonly kind: 'capacitor';
  readonly farads: number;
  readonly ratedV?: number;
}

/** What the sums read of an element. */
export type ElementValues = Element | Heater | Resistor | Capacitor;

export interface PlacedElement {
  /** Unlike any other of the document. */
  readonly id: string;
  readonly part: Part;
  readonly values: ElementValues;
  readonly from: NetGroup;
  readonly to: NetGroup;
  /** Points, as `Points.rootOf` has them. */
  readonly fromPoint: number;
  readonly toPoint: number;
  /** Keys of its terminals; null for the unit's metal. */
  readonly fromKey: string;
  readonly toKey: string | null;
  /** True where the handbook gave it and not the document. */
  readonly fromHandbook: boolean;
}

export interface PlacedElements {
  /** Of each part that has any; the same list while nothing about it changed. */
  readonly ofPart: ReadonlyMap<Part, readonly PlacedElement[]>;
  readonly all: readonly PlacedElement[];
  readonly source: { readonly points: Points; readonly nets: GroupedNets };
}

const tubeTypes = new Map<string, TubeType | null>();

/** The handbook's row for a tube; null for other parts and for types that it does not know. */
export function tubeTypeOf({ kind, type }: Part): TubeType | null {
  if (type === undefined || (kind !== 'tube' && kind !== 'picture tube')) return null;
  const known = tubeTypes.get(type);
  if (known !== undefined) return known;
  const found = findTubeType(type);
  if (tubeTypes.size < 1000) tubeTypes.set(type, found);
  return found;
}

/** Elements whose terminals all exist; those of unknown kinds are left out. */
export function placeElements(
  points: Points,
  nets: GroupedNets,
  before?: PlacedElements
): PlacedElements {
  const { parts } = points.source;
  if (before?.source.points === points && before.source.nets === nets) return before;
  const isSameGround =
    before?.source.points.rootOf === points.rootOf &&
    before.source.points.source.parts === parts &&
    before.source.points.source.units === points.source.units;
  const ofPart = new Map<Part, readonly PlacedElement[]>();
  for (const part of isSameGround ? before.ofPart.keys() : parts.parts) {
    const same = isSameGround ? before.ofPart.get(part) : undefined;
    if (same?.every((placed) => isOnItsNets(placed, nets))) {
      ofPart.set(part, same);
      continue;
    }
    if (!part.elements && !tubeTypeOf(part) && !elementFromValue(part)) continue;
    const placed = placePart(part, points, nets);
    const known = before?.ofPart.get(part);
    if (placed.length > 0) ofPart.set(part, known && isSame(known, placed) ? known : placed);
  }
  const isAsBefore =
    before?.ofPart.size === ofPart.size &&
    [...ofPart].every(([part, placed]) => before.ofPart.get(part) === placed);
  return isAsBefore
    ? { ...before, source: { points, nets } }
    : { ofPart, all: [...ofPart.values()].flat(), source: { points, nets } };
}

const isOnItsNets = (
  { from, to, fromPoint, toPoint }: PlacedElement,
  { groupAt }: GroupedNets
): boolean => groupAt[fromPoint] === from && groupAt[toPoint] === to;

const isSame = (a: readonly PlacedElement[], b: readonly PlacedElement[]): boolean =>
  a.length === b.length &&
  a.every((placed, n) => {
    const other = b[n];
    return other !== undefined && sameFields(placed, other);
  });

const handbookHeaters = new WeakMap<TubeType, readonly (readonly [string, string, Heater])[]>();

function heatersOf(type: TubeType): readonly (readonly [string, string, Heater])[] {
  const known = handbookHeaters.get(type);
  if (known) return known;
  const heaters = heaterElements(type).map(
    ({ from, to, volts, amps }) => [from, to, { kind: 'heater', volts, amps }] as const
  );
  handbookHeaters.set(type, heaters);
  return heaters;
}

interface End {
  readonly point: number;
  readonly key: string | null;
}

function placePart(part: Part, points: Points, nets: GroupedNets): PlacedElement[] {
  const { terminalByKey, entriesOf } = points.source.parts;
  const placed: PlacedElement[] = [];
  const endAt = (entry: TerminalEntry | undefined): End | undefined =>
    entry && { point: points.rootOf[entry.number] ?? entry.number, key: entry.key };
  const metal = (): End | undefined => {
    const point = metalPointOf(points, part.unit);
    return point === undefined ? undefined : { point, key: null };
  };
  const place = (
    id: string,
    values: ElementValues,
    first: End | undefined,
    last: End | undefined,
    fromHandbook: boolean
  ): void => {
    const from = first && nets.groupAt[first.point];
    const to = last && nets.groupAt[last.point];
    if (!from || !to || first.key === null) return;
    const ends = {
      fromPoint: first.point,
      toPoint: last.point,
      fromKey: first.key,
      toKey: last.key
    };
    placed.push({ id, part, values, from, to, ...ends, fromHandbook });
  };
  let hasHeater = false;
  let hasKnown = false;
  for (const element of Object.values(part.elements ?? {})) {
    if (!isKnownElement(element)) continue;
    hasKnown = true;
    if (element.kind === 'heater') hasHeater = true;
    const at = (terminal: string) => endAt(terminalByKey.get(terminalKey(part.id, terminal)));
    const from = at(element.from);
    const to = element.to === undefined ? metal() : at(element.to);
    // A pulse stands at its first terminal, whatever it is counted against.
    const end = to ?? (element.kind === 'pulse' ? from : undefined);
    place(terminalKey(part.id, element.id), element, from, end, false);
  }
  const entries = entriesOf.get(part) ?? [];
  const named = (name: string) => endAt(entries.find(({ terminal }) => terminal.name === name));
  const type = hasHeater ? null : tubeTypeOf(part);
  for (const [from, to, heater] of type ? heatersOf(type) : []) {
    place(`${part.id}/heater ${from}`, heater, named(from), named(to), true);
  }
  const fromValue = hasKnown ? null : elementFromValue(part);
  if (fromValue) {
    const [first, last] = entries;
    place(`${part.id}/value`, fromValue, endAt(first), endAt(last), false);
  }
  return placed;
}
