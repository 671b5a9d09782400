// The conductor to put in where nothing is planned: gauge, make and class by the policy.
// Common practice, no source: 22 AWG solid tinned for ordinary runs, stranded where it flexes,
// 20 AWG for heater branches, heater trunks by the sum of what they feed, never thinner than what was there.
import type { Id, Policy, Wire } from '#document/index.ts';
import { ampacity } from '#physics/ampacity.ts';
import { SumError } from '#physics/sum-error.ts';
import { formatAmps, formatAwg } from '#quantity/index.ts';
import type { FunctionRole } from './function-words.ts';
import type { Need, RecommendedConductor, TerminalEntry } from './types.ts';
import type { RailClass } from './unit-rails.ts';

/** Wires that no hook-up wire may take the place of. */
const notBought: ReadonlySet<string> = new Set(['component lead', 'shield', 'pigtail']);

/** Parts whose leads move when the set is opened or the part is turned. */
const flexing: ReadonlySet<string> = new Set(['plug', 'yoke', 'picture tube', 'speaker', 'clip']);

/** The half that follows from the wire itself. */
export interface GaugeToBuy extends Pick<
  RecommendedConductor,
  'awg' | 'stranding' | 'plating' | 'why'
> {
  /** Units that it runs in, as far as they are known. */
  readonly units: readonly Id[];
}

/** Null where no wire is to be bought.
 *  @param ends the terminals that it ends at, where they are known
 *  @param atHeaterPin one of them is a heater pin */
export function gaugeToBuy(
  wire: Wire,
  roles: ReadonlySet<FunctionRole>,
  ends: readonly TerminalEntry[],
  atHeaterPin: boolean,
  policy: Policy
): GaugeToBuy | null {
  if (wire.isPart !== undefined || notBought.has(wire.construction)) return null;
  const units = [...new Set(ends.map(({ part }) => part.unit))];
  const { awg, words } = gauge(wire, roles, atHeaterPin, policy);
  const flexes = units.length > 1 || ends.some(({ part }) => flexing.has(part.kind));
  const stranding = flexes && wire.found.stranding !== 'solid' ? 'stranded' : 'solid';
  const why = `${words}: ${formatAwg(awg)} ${stranding} tinned`;
  return { awg, stranding, plating: 'tinned', why, units };
}

/** Even sizes that are sold, thinnest first; the published table ends with them. */
const sizesSold = [22, 20, 18, 16, 14, 12, 10] as const;

/** Insulation at the low end of what is sold, so that any will do. */
const leastRatingC = 80;

/** A trunk is twisted with its return, which carries the same. */
const trunkWires = 2;

const allowedOf = new WeakMap<Policy, Map<number, number>>();

/** What a size carries by the policy, A. */
function allowedA(awg: number, policy: Policy): number {
  const known = allowedOf.get(policy)?.get(awg);
  if (known !== undefined) return known;
  const { ambientC, ampacityBasis: basis } = policy;
  const { allowedA: amps } = ampacity({
    awg,
    wires: trunkWires,
    ratingC: leastRatingC,
    ambientC,
    basis
  });
  allowedOf.set(policy, (allowedOf.get(policy) ?? new Map<number, number>()).set(awg, amps));
  return amps;
}

/** The gauge that carries a current, where the usual one does not. Null where no wire that is sold does,
 *  or the cabinet is too hot for any. */
function gaugeForAmps(gauge: GaugeToBuy, amps: number, policy: Policy): GaugeToBuy | null {
  const { ambientC } = policy;
  try {
    const awg = sizesSold.find((size) => size <= gauge.awg && allowedA(size, policy) >= amps);
    if (awg === undefined || awg === gauge.awg) return null;
    const why = `by its ${formatAmps(amps)}, ${leastRatingC} °C insulation in ${ambientC} °C beside its return: ${formatAwg(awg)} ${gauge.stranding} tinned`;
    return { ...gauge, awg, why };
  } catch (problem) {
    if (problem instanceof SumError) return null;
    throw problem;
  }
}

/** The conductor with the class that it needs.
 *  @param amps that it carries, as far as that is known
 *  @param rail below which nothing is proposed while the need is not known */
export function recommendConductor(
  gauge: GaugeToBuy | null,
  need: Need | null,
  amps: number,
  policy: Policy,
  rail: RailClass
): RecommendedConductor | null {
  if (!gauge) return null;
  const { awg, stranding, plating, why } = gaugeForAmps(gauge, amps, policy) ?? gauge;
  const { classV, classBasis } = classToBuy(need, rail);
  const atLeast = need === null || need.atLeast;
  return { awg, stranding, plating, classV, atLeast, why, classBasis };
}

function gauge(
  wire: Wire,
  roles: ReadonlySet<FunctionRole>,
  atHeaterPin: boolean,
  policy: Policy
): { awg: number; words: string } {
  const isHeater = roles.has('heater') || (roles.size === 0 && atHeaterPin);
  const usual = isHeater ? policy.heaterBranchAwg : policy.defaultAwg;
  const words = isHeater ? 'heater branch' : 'ordinary run';
  const { awg: found } = wire.found;
  // A smaller number is a thicker wire.
  return found !== undefined && found < usual
    ? { awg: found, words: 'no thinner than the wire that was there' }
    : { awg: usual, words };
}

function classToBuy(
  need: Need | null,
  rail: RailClass
): Pick<RecommendedConductor, 'classV' | 'classBasis'> {
  if (need && !need.atLeast) return { classV: need.requiredV, classBasis: 'by what it carries' };
  return need && need.requiredV > rail.classV
    ? { classV: need.requiredV, classBasis: 'by the part of what it carries that is known' }
    : { classV: rail.classV, classBasis: `as ${rail.words}` };
}
