// The highest rail of each unit, and the highest pulse: nothing is proposed below them for a wire of
// which nothing is known, since that wire may turn out to be on one of them.
import type { Id, Policy } from '#document/index.ts';
import { noExpectations } from './expected-parts.ts';
import type { FunctionRole } from './function-words.ts';
import { sameFields } from './same.ts';
import type { Net, Stress, TerminalEntry } from './types.ts';
import { needOf, railFloor } from './wire-need.ts';
import { stressOf } from './wire-stress.ts';

export interface UnitRails {
  readonly rails: Highest;
  /** Rails and pulses. A second anode counts as neither: its lead is told at a glance. */
  readonly pulses: Highest;
  /** The class of the highest in one of these units, else of the policy's floor for rails. */
  readonly classFor: RailClassFor;
}

/** @param mayBePulsed nothing says that the wire carries no pulse: see `mayBePulsed` */
export type RailClassFor = (units: readonly Id[], mayBePulsed: boolean) => RailClass;

interface Highest {
  readonly of: ReadonlyMap<Id, Rail>;
  readonly anywhere: Rail;
}

export interface RailClass {
  readonly classV: number;
  /** "the highest rail there, B+ 285 V". */
  readonly words: string;
}

interface Rail extends RailClass {
  readonly stressV: number;
}

/** What is known by its function to be no point of a sweep circuit may still stand on a rail. */
const unpulsed: readonly FunctionRole[] = [
  'ground',
  'heater',
  'line',
  'supply',
  'minus supply',
  'screen',
  'cathode',
  'grid',
  'audio',
  'signal',
  'control'
];

/** True for a wire unless its function says that no sweep pulse gets to it.
 *  @param says whether it has a role */
export const mayBePulsed = (says: (role: FunctionRole) => boolean): boolean =>
  says('sweep') || !unpulsed.some(says);

/** @param before given again where it says the same */
export function findUnitRails(
  nets: Iterable<Net>,
  findEntry: (key: string) => TerminalEntry | undefined,
  policy: Policy,
  before?: UnitRails
): UnitRails {
  const floor: Rail = {
    classV: policy.supplyFloorV,
    stressV: 0,
    words: 'the floor for supply rails'
  };
  const rails = { of: new Map<Id, Rail>(), anywhere: floor };
  const pulses = { of: new Map<Id, Rail>(), anywhere: floor };
  for (const net of nets) {
    const rail = railOf(net, policy);
    if (!rail) continue;
    const units = unitsOf(net, findEntry);
    for (const highest of net.isSupply ? [rails, pulses] : [pulses]) {
      if (rail.stressV > highest.anywhere.stressV) highest.anywhere = rail;
      for (const unit of units) {
        if (rail.stressV > (highest.of.get(unit)?.stressV ?? 0)) highest.of.set(unit, rail);
      }
    }
  }
  if (before && isSame(before.rails, rails) && isSame(before.pulses, pulses)) return before;
  const classFor: RailClassFor = (units, isPulsed) => {
    const { of, anywhere } = isPulsed ? pulses : rails;
    // A wire with no end found may lead anywhere.
    if (units.length === 0) return anywhere;
    return units
      .map((unit) => of.get(unit) ?? floor)
      .reduce((worst, rail) => (rail.stressV > worst.stressV ? rail : worst), floor);
  };
  return { rails, pulses, classFor };
}

const isSame = (a: Highest, b: Highest): boolean =>
  sameFields(a.anywhere, b.anywhere) &&
  a.of.size === b.of.size &&
  [...a.of].every(([unit, rail]) => {
    const other = b.of.get(unit);
    return other !== undefined && sameFields(rail, other);
  });

/** By its direct volts and its pulses: ripple is the affair of its own wires. */
function railOf(net: Net, policy: Policy): Rail | null {
  const { dcV, coldDcV, pulseV, isSupply } = net;
  const isPulsed = pulseV !== null && pulseV.value !== 0;
  if (net.isChassis || net.roles.has('second anode') || (!isSupply && !isPulsed)) return null;
  const parts = { dcV, coldDcV, pulseV, acV: null, solvedDcV: null };
  const stress: Stress | null = stressOf(parts, noExpectations);
  const need = needOf(stress, railFloor(policy), policy);
  if (!stress || !need) return null;
  const words = `the highest ${isSupply ? 'rail' : 'pulse'} there, ${net.name}`;
  return { classV: need.requiredV, stressV: stress.volts, words };
}

function unitsOf(net: Net, findEntry: (key: string) => TerminalEntry | undefined): ReadonlySet<Id> {
  const units = new Set<Id>();
  for (const key of net.terminals) {
    const entry = findEntry(key);
    if (entry) units.add(entry.part.unit);
  }
  return units;
}
