// Everything that the study says of one wire, from the wire and its slice of the rest.
import type { ChassisDocument, Part, Policy, Wire } from '#document/index.ts';
import type { TubeType } from '#handbook/tube-types.ts';
import { cutLengthOf } from './cut-length.ts';
import { expectedParts } from './expected-parts.ts';
import type { RoleReader } from './function-words.ts';
import { wireLength } from './path-length.ts';
import { recommendConductor } from './recommended-conductor.ts';
import type { Amount, DocumentIndex, Net, TerminalEntry, WireStudy } from './types.ts';
import type { UnitRails } from './unit-rails.ts';
import { carriesOf } from './wire-carries.ts';
import { needOf } from './wire-need.ts';
import { foundRatingOf, isBareWire, ratingOf } from './wire-rating.ts';
import { stressOf } from './wire-stress.ts';

/** What all wires of a document share. */
export interface WireContext {
  readonly document: ChassisDocument;
  readonly policy: Policy;
  readonly index: DocumentIndex;
  readonly rails: UnitRails;
  readonly rolesOf: RoleReader;
  readonly findTube: (part: Part) => TubeType | null;
}

/** @param nets the nets of its ends: none, one, or two for a wire that does not join them
 *  @param seriesAmps from the wire that it is in series with */
export function studyWire(
  wire: Wire,
  nets: readonly Net[],
  seriesAmps: Amount | null,
  context: WireContext
): WireStudy {
  const { document, policy, index, rails, rolesOf, findTube } = context;
  const roles = rolesOf(wire.function);
  const ends = [index.findAt(wire.from), index.findAt(wire.to)].filter((end) => end !== undefined);
  const net = nets[0];
  const { coldDcV, ...carries } = carriesOf(wire, nets, seriesAmps);
  const stress = stressOf({ ...carries, coldDcV }, expectedParts(roles, net, ends));
  const onRail = nets.some((each) => each.standsOnRail);
  const need = needOf(stress, onRail, policy);
  const atHeaterPin = ends.some((end) => isHeaterPin(end, findTube));
  const recommended = recommendConductor({ wire, need, roles, ends, atHeaterPin, rails, policy });
  const length = wireLength(document, index, wire);
  const awg = wire.found.awg ?? wire.planned.awg ?? null;
  const awgToStrip = wire.planned.awg ?? recommended?.awg ?? awg ?? policy.defaultAwg;
  return {
    id: wire.id,
    net: net?.id ?? null,
    carries,
    stress,
    need,
    isBare: isBareWire(wire),
    foundRating: foundRatingOf(document, wire),
    plannedRating: ratingOf(wire.planned),
    length,
    cut: cutLengthOf(index, wire, length, awgToStrip, policy),
    awg,
    recommended,
    roles
  };
}

function isHeaterPin(
  { part, terminal }: TerminalEntry,
  findTube: (part: Part) => TubeType | null
): boolean {
  for (const element of Object.values(part.elements ?? {})) {
    if (element.kind === 'heater' && (element.from === terminal.id || element.to === terminal.id)) {
      return true;
    }
  }
  return findTube(part)?.heater?.pins.includes(terminal.name) === true;
}
