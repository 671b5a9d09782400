// Which conductor lies there now, the old one or its replacement, and what is known of it: what the
// network, the ampacity and the bundles reckon with.
import type { Found, Planned, Policy, Wire } from '#document/index.ts';
import { SumError } from '#physics/sum-error.ts';
import { mmPerInch, wireDiameterMm, wireResistanceOhm } from '#physics/conductor.ts';
import type { WireLength } from './types.ts';
import { styleOf } from './wire-rating.ts';

export interface Conductor {
  /** The replacement where it was fitted, otherwise what was found. */
  readonly which: 'found' | 'planned';
  readonly awg: number | null;
  readonly stranding: 'solid' | 'stranded' | null;
  readonly plating: 'bare' | 'tinned';
  /** What its insulation stands, degrees C; null where nothing tells. */
  readonly ratingC: number | null;
  /** Over the insulation, mm; null where nothing tells. */
  readonly outsideMm: number | null;
}

/** True where a replacement has been fitted. */
export const isReplaced = ({ state, planned }: Wire): boolean =>
  (state === 'fitted' || state === 'checked') &&
  planned.way !== undefined &&
  planned.way !== 'keep' &&
  planned.way !== 're-sleeve';

/** What one side of the wire's record says, with the gauge of the other side where it says none. */
function read(own: Found | Planned, other: Found | Planned): Omit<Conductor, 'which'> {
  const awg = own.awg ?? other.awg ?? null;
  const style = styleOf(own.style) ?? styleOf(own.insulation);
  const wallMm = style?.wallMm ?? wallInWords(own.insulation);
  return {
    awg,
    stranding: own.stranding ?? null,
    plating: own.plating ?? 'bare',
    ratingC: own.ratingC ?? style?.celsius ?? null,
    outsideMm: own.diameterMm ?? outsideByWall(awg, wallMm)
  };
}

/** The wall in "thermoplastic, 1/32 in", mm; null where the words give none. */
function wallInWords(insulation: string | undefined): number | null {
  if (insulation === undefined || insulation.length > 200) return null;
  const [, above, below] = /\b(\d)\/(\d{1,2})(?:"|\s*in(?:ch)?\b)/.exec(insulation) ?? [];
  const mm = (Number(above) / Number(below)) * mmPerInch;
  return mm > 0 && mm < 10 ? mm : null;
}

/** Conductor and both walls, mm. A stranded conductor is some 15 % thicker than a solid one. */
function outsideByWall(awg: number | null, wallMm: number | null): number | null {
  if (awg === null || wallMm === null) return null;
  return 1.15 * wireDiameterMm(awg) + 2 * wallMm;
}

/** The conductor that lies there. */
export function conductorInPlace(wire: Wire): Conductor {
  const { found, planned } = wire;
  return isReplaced(wire)
    ? { which: 'planned', ...read(planned, found) }
    : { which: 'found', ...read(found, planned) };
}

/** The conductor that is to lie there: the new wire that is planned, else what lies there. */
export function conductorPlanned(wire: Wire): Conductor {
  const { found, planned } = wire;
  if (planned.way !== 'new wire') return conductorInPlace(wire);
  return { which: 'planned', ...read(planned, found) };
}

/** Resistance from end to end at the policy's ambient, ohm; null where gauge or length are not known or lie
 *  outside of what the tables hold: such a wire counts as a mere join. */
export function wireOhms(
  { awg, plating }: Conductor,
  length: WireLength | null,
  policy: Policy
): number | null {
  if (awg === null || length === null) return null;
  const lengthM = length.mm / 1000;
  const temperatureC = policy.ambientC;
  // No table of tinned wire goes below 40 AWG.
  const inputs = { awg, lengthM, temperatureC, plating: awg > 40 ? 'bare' : plating } as const;
  try {
    return wireResistanceOhm(inputs);
  } catch (problem) {
    if (problem instanceof SumError) return null;
    throw problem;
  }
}
