// The conductor to put in where nothing is planned: gauge, make and class by the policy.
// Common practice, no source: 22 AWG solid tinned for ordinary runs, stranded where it flexes,
// 20 AWG for heater branches, never thinner than what was there.
import type { Policy, Wire } from '#document/index.ts';
import { formatAwg, formatVolts } from '#quantity/index.ts';
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
  const { classV, why } = classToBuy(need, inputs.rails, units);
  return {
    awg,
    stranding,
    plating: 'tinned',
    classV,
    atLeast: need === null || need.atLeast,
    why: `${words}: ${formatAwg(awg)} ${stranding} tinned; ${why}`
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

function classToBuy(need: Need | null, rails: UnitRails, units: readonly string[]) {
  if (need && !need.atLeast) {
    return {
      classV: need.requiredV,
      why: `${formatVolts(need.requiredV)} class by what it carries`
    };
  }
  const rail = rails.classFor(units);
  const classV = Math.max(rail.classV, need?.requiredV ?? 0);
  const known = need ? 'a part of what it carries is not known' : 'what it carries is not known';
  return {
    classV,
    why: `${known}: at least the ${formatVolts(classV)} class, ${
      need && need.requiredV > rail.classV ? 'by the part that is' : `as ${rail.words}`
    }`
  };
}
