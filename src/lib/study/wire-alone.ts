// What can be said of one wire without its neighbours: its length, its conductor, what its words say. All
// that the circuit and the bundles need to know of it.
import type { ChassisDocument, Id, Policy, WireEnd } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { tubeTypeOf } from './circuit-elements.ts';
import { conductorInPlace, wireOhms, type Conductor } from './conductor-in-place.ts';
import type { Connections } from './connections.ts';
import { cutLengthOf } from './cut-length.ts';
import type { FunctionRole, RoleReader } from './function-words.ts';
import type { WireSlot } from './index-wires.ts';
import { wireLength } from './path-length.ts';
import { gaugeToBuy, type GaugeToBuy } from './recommended-conductor.ts';
import { keepFields, keepMap, patchMap, sameItems } from './same.ts';
import { listStops, stopKey, type WayStop } from './segments.ts';
import type { CutLength, Rating, TerminalEntry, WireLength } from './types.ts';
import { foundRatingOf, isBareWire, ratingOf } from './wire-rating.ts';

export interface WireAlone {
  readonly slot: WireSlot;
  readonly roles: ReadonlySet<FunctionRole>;
  readonly isBare: boolean;
  readonly foundRating: Rating | null;
  readonly plannedRating: Rating | null;
  readonly conductor: Conductor;
  readonly length: WireLength | null;
  readonly cut: CutLength | null;
  /** Gauge that was found, else planned, else null. */
  readonly awg: number | null;
  readonly gauge: GaugeToBuy | null;
  /** From end to end; null where it counts as a mere join. */
  readonly ohms: number | null;
  readonly stops: readonly WayStop[];
}

/** What of a document a wire alone depends on, besides itself and its ends. */
export interface WireGround {
  readonly document: ChassisDocument;
  readonly policy: Policy;
}

export type AloneOf = ReadonlyMap<Id, WireAlone>;

/** Every wire alone; one of which nothing changed is the same object as before. */
export function listAlone(
  { wires, layout, changes }: Pick<Connections, 'wires' | 'layout' | 'changes'>,
  ground: WireGround,
  rolesOf: RoleReader,
  before?: { readonly ground: WireGround; readonly alone: AloneOf; readonly ids: readonly Id[] }
): AloneOf {
  const study = (slot: WireSlot, was: WireAlone | undefined): WireAlone =>
    was?.slot === slot && before && isSameGround(slot, before.ground, ground)
      ? was
      : studyAlone(slot, ground, rolesOf, was);
  if (before?.ids === layout.ids && isSameForAll(before.ground, ground)) {
    return patchMap(before.alone, changes.touched, (id, was) => {
      const slot = wires.slotById.get(id);
      return slot && study(slot, was);
    });
  }
  const alone = new Map<Id, WireAlone>();
  for (const slot of wires.slots) {
    const { id } = slot.wire;
    alone.set(id, study(slot, before?.alone.get(id)));
  }
  return keepMap(before?.alone, alone);
}

const isSameForAll = (was: WireGround, now: WireGround): boolean =>
  was.policy === now.policy &&
  was.document.cables === now.document.cables &&
  was.document.supports === now.document.supports;

/** The supports on its way, its cable and the policy are what they were. */
function isSameGround({ wire }: WireSlot, was: WireGround, now: WireGround): boolean {
  if (was.policy !== now.policy) return false;
  const { cables: oldCables, supports: oldSupports } = was.document;
  const { cables, supports } = now.document;
  if (cables !== oldCables && wire.cable !== undefined) {
    if (findElement(cables, wire.cable) !== findElement(oldCables, wire.cable)) return false;
  }
  return (
    supports === oldSupports ||
    (wire.route?.supports ?? []).every(
      (id) => findElement(supports, id) === findElement(oldSupports, id)
    )
  );
}

function studyAlone(
  slot: WireSlot,
  { document, policy }: WireGround,
  rolesOf: RoleReader,
  before: WireAlone | undefined
): WireAlone {
  const { wire, from, to } = slot;
  const roles = rolesOf(wire.function);
  const ends = [from, to].filter((end) => end !== undefined);
  const length = wireLength(document, slot);
  const conductor = keepFields(before?.conductor, conductorInPlace(wire));
  const gauge = gaugeToBuy(wire, roles, ends, ends.some(isHeaterPin), policy);
  const awg = wire.found.awg ?? wire.planned.awg ?? null;
  const findAt = (end: WireEnd) => (end === wire.from ? from : to);
  const stops = listStops(document, { findAt }, wire);
  return {
    slot,
    roles,
    isBare: isBareWire(wire),
    foundRating: foundRatingOf(document, wire),
    plannedRating: ratingOf(wire.planned),
    conductor,
    length,
    cut: cutLengthOf(
      slot,
      length,
      wire.planned.awg ?? gauge?.awg ?? awg ?? policy.defaultAwg,
      policy
    ),
    awg,
    gauge,
    ohms: wireOhms(conductor, length, policy),
    stops: before && sameStops(before.stops, stops) ? before.stops : stops
  };
}

const sameStops = (a: readonly WayStop[], b: readonly WayStop[]): boolean =>
  sameItems(a.map(stopKey), b.map(stopKey));

function isHeaterPin({ part, terminal }: TerminalEntry): boolean {
  for (const element of Object.values(part.elements ?? {})) {
    if (element.kind === 'heater' && (element.from === terminal.id || element.to === terminal.id)) {
      return true;
    }
  }
  return tubeTypeOf(part)?.heater?.pins.includes(terminal.name) === true;
}
