// The conductor to put in where nothing is planned: gauge, make and class by the policy.
// Common practice, no source: 22 AWG solid tinned for ordinary runs, stranded where it flexes,
// 20 AWG for heater branches, never thinner than what was there.
import type { Policy, Wire } from '#document/index.ts';
import { formatAwg } from '#quantity/index.ts';
import type { FunctionRole } from './function-words.ts';
import type { Need, RecommendedConductor, TerminalEntry } from './types.ts';
import type { UnitRails } from './unit-rails.ts';

/** Wires that no hook-up wire may take the place of. */
const notBought: ReadonlySet<string> = new Set(['component lead', 'shield', 'pigtail']);

/** Parts whose leads move when the set is opened or the part is turned. */
const flexing: ReadonlySet<string> = new Set(['plug', 'yoke', 'picture tube', 'speaker', 'clip']);

export interface RecommendInputs {
  readonly wire: Wire;
  readonly need: Need | null;
  readonly roles: ReadonlySet<FunctionRole>;
  /** The terminals that it ends at, where they are known. */
  readonly ends: readonly TerminalEntry[];
  /** One of the ends is a heater pin. */
  readonly atHeaterPin: boolean;
  readonly rails: UnitRails;
  readonly policy: Policy;
}

export function recommendConductor(inputs: RecommendInputs): RecommendedConductor | null {
  const { wire, need, ends } = inputs;
  if (wire.isPart !== undefined || notBought.has(wire.construction)) return null;
  const units = [...new Set(ends.map(({ part }) => part.unit))];
  const { awg, words } = gauge(inputs);
  const flexes = units.length > 1 || ends.some(({ part }) => flexing.has(part.kind));
  const stranding = flexes && wire.found.stranding !== 'solid' ? 'stranded' : 'solid';
  const { classV, classBasis } = classToBuy(need, inputs.rails, units);
  return {
    awg,
    stranding,
    plating: 'tinned',
    classV,
    atLeast: need === null || need.atLeast,
    why: `${words}: ${formatAwg(awg)} ${stranding} tinned`,
    classBasis
  };
}

function gauge({ wire, roles, atHeaterPin, policy }: RecommendInputs) {
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
  rails: UnitRails,
  units: readonly string[]
): Pick<RecommendedConductor, 'classV' | 'classBasis'> {
  if (need && !need.atLeast) return { classV: need.requiredV, classBasis: 'by what it carries' };
  const rail = rails.classFor(units);
  return need && need.requiredV > rail.classV
    ? { classV: need.requiredV, classBasis: 'by the part of what it carries that is known' }
    : { classV: rail.classV, classBasis: `as ${rail.words}` };
}
