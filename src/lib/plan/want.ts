// What a wire's replacement must be at the least: volts by kind, gauge, degrees, make and colour.
import type { Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { chassisColourOf, findCircuitFunction } from '#handbook/index.ts';
import { hotAt } from '#checks/hot-places.ts';
import { findAmpacity } from '#checks/wire-ampacity.ts';
import { formatAmps, formatAwg, formatCelsius } from '#quantity/index.ts';
import type { Study, WireStudy } from '#study/index.ts';
import { formOf } from './offers.ts';
import type { PlanOptions, VoltsKind, WireWant } from './types.ts';

/** A part of the stress that is smaller is left out of the question which kind a rating holds for. */
const share = 0.1;
const kinds: readonly VoltsKind[] = ['dc', 'ac', 'pulse'];

/** Null where no wire is to be bought: a component's own lead, a shield, a wire that is itself a part. */
export function wantOf(
  study: Study,
  wire: Wire,
  about: WireStudy,
  { colours = 'as found' }: PlanOptions
): WireWant | null {
  const { recommended, need } = about;
  if (!recommended || wire.isPart !== undefined) return null;
  const { classV, stranding, plating } = recommended;
  const isKnown = need !== null && !need.atLeast;
  const cable =
    wire.cable === undefined ? undefined : findElement(study.document.cables, wire.cable);
  const { awg, basis } = gaugeFor(study, wire, about, recommended.awg, recommended.why);
  const heat = heatOf(study, wire);
  const coded = colours === 'code' ? codedColour(wire) : null;
  return {
    // A rating between two steps of the ladder counts as it is.
    ratingV: isKnown ? Math.min(need.askedV, classV) : classV,
    classV,
    atLeast: !isKnown,
    ratingBasis: isKnown ? need.basis : recommended.classBasis,
    kinds: kindsOf(about),
    awg,
    awgBasis: basis,
    stranding,
    plating,
    ...heat,
    form: formOf(cable?.kind ?? wire.construction),
    colour: coded ?? wire.found.colour ?? wire.planned.colour ?? null,
    tracer: coded === null ? (wire.found.tracer ?? wire.planned.tracer ?? null) : null
  };
}

/** By the chassis wiring code, where the wire's own words say what it does. */
function codedColour({ function: words }: Wire): string | null {
  const circuit = words === undefined ? null : findCircuitFunction(words);
  return circuit === null ? null : chassisColourOf(circuit).colour;
}

function kindsOf({ stress }: WireStudy): readonly VoltsKind[] {
  if (!stress || stress.atLeast) return kinds;
  const { dcV, acV, pulseV } = stress.made;
  const parts = { dc: Math.abs(dcV), ac: Math.abs(acV) * Math.SQRT2, pulse: Math.abs(pulseV) };
  return kinds.filter((kind) => parts[kind] > share * stress.volts);
}

const thickest = 10;

/** Thicker than recommended where the current asks for it. */
function gaugeFor(
  study: Study,
  wire: Wire,
  about: WireStudy,
  least: number,
  why: string
): { awg: number; basis: string } {
  const amps = about.carries.amps?.value ?? 0;
  for (let awg = least; awg > thickest; awg -= 2) {
    const allowed = allowedAmps(study, wire, awg, null);
    if (allowed === null || allowed >= amps) {
      return {
        awg,
        basis:
          awg === least ? why : `${formatAmps(amps)} in its bundle: ${formatAwg(awg)} carries it`
      };
    }
  }
  return {
    awg: Math.min(least, thickest),
    basis: `${formatAmps(amps)}: as thick as the tables go`
  };
}

/** What a conductor may carry where the wire lies, A; null where no table tells. */
export const allowedAmps = (
  study: Study,
  wire: Wire,
  awg: number,
  celsius: number | null
): number | null =>
  findAmpacity(study, wire, {
    which: 'planned',
    awg,
    stranding: null,
    plating: 'tinned',
    ratingC: celsius ?? Math.max(80, study.policy.hotZoneC),
    outsideMm: null
  })?.allowedA ?? null;

function heatOf(study: Study, wire: Wire): Pick<WireWant, 'celsius' | 'celsiusBasis'> {
  const { ambientC, hotZoneC } = study.policy;
  for (const end of [wire.from, wire.to]) {
    const entry = study.index.findAt(end);
    const hot = entry ? hotAt(study, entry) : null;
    if (hot !== null) {
      const celsius = Math.max(hotZoneC, ambientC);
      return { celsius, celsiusBasis: `${formatCelsius(celsius)} at ${hot}` };
    }
  }
  return {
    celsius: ambientC,
    celsiusBasis: `${formatCelsius(ambientC)} in the cabinet, assumed: add its own rise`
  };
}
