// The highest rail of each unit: nothing is proposed below it for a wire of which nothing is known,
// since that wire may turn out to be on it.
import type { Id, Policy } from '#document/index.ts';
import { noExpectations } from './expected-parts.ts';
import { sameFields } from './same.ts';
import type { Net, Stress, TerminalEntry } from './types.ts';
import { needOf } from './wire-need.ts';
import { stressOf } from './wire-stress.ts';

export interface UnitRails {
  /** By unit, its highest rail; and the highest anywhere. */
  readonly highest: ReadonlyMap<Id, RailClass>;
  readonly anywhere: RailClass;
  /** The class of the highest rail in one of these units, else of the policy's floor for rails. */
  readonly classFor: (units: readonly Id[]) => RailClass;
}

export interface RailClass {
  readonly classV: number;
  /** "as its unit's highest rail, B+ 285 V". */
  readonly words: string;
}

interface Rail extends RailClass {
  readonly stressV: number;
}

/** @param before given again where it says the same */
export function findUnitRails(
  nets: Iterable<Net>,
  findEntry: (key: string) => TerminalEntry | undefined,
  policy: Policy,
  before?: UnitRails
): UnitRails {
  const floorV = policy.supplyFloorV;
  const floor: Rail = { classV: floorV, stressV: 0, words: 'the floor for supply rails' };
  const highest = new Map<Id, Rail>();
  let anywhere = floor;
  for (const net of nets) {
    if (!net.isSupply || net.roles.has('second anode')) continue;
    const stress = railStress(net);
    const need = needOf(stress, true, policy);
    if (!stress || !need) continue;
    const words = `the highest rail there, ${net.name}`;
    const rail = { classV: need.requiredV, stressV: stress.volts, words };
    if (rail.stressV > anywhere.stressV) anywhere = rail;
    for (const unit of unitsOf(net, findEntry)) {
      const known = highest.get(unit) ?? floor;
      if (rail.stressV > known.stressV) highest.set(unit, rail);
    }
  }
  if (before?.anywhere && sameFields(before.anywhere, anywhere)) {
    const isSame =
      before.highest.size === highest.size &&
      [...highest].every(([unit, rail]) => {
        const was = before.highest.get(unit);
        return was !== undefined && sameFields(was, rail);
      });
    if (isSame) return before;
  }
  return {
    highest,
    anywhere,
    classFor: (units) => {
      // A wire with no end found may lead anywhere.
      if (units.length === 0) return anywhere;
      return units
        .map((unit) => highest.get(unit) ?? floor)
        .reduce((worst, rail) => (rail.stressV > worst.stressV ? rail : worst), floor);
    }
  };
}

/** By its direct volts: ripple and pulses on it are the affair of its own wires. */
const railStress = ({ dcV, coldDcV }: Net): Stress | null =>
  stressOf({ dcV, coldDcV, acV: null, pulseV: null, solvedDcV: null }, noExpectations);

function unitsOf(net: Net, findEntry: (key: string) => TerminalEntry | undefined): ReadonlySet<Id> {
  const units = new Set<Id>();
  for (const key of net.terminals) {
    const entry = findEntry(key);
    if (entry) units.add(entry.part.unit);
  }
  return units;
}
