// The highest rail of each unit: nothing is proposed below it for a wire of which nothing is known,
// since that wire may turn out to be on it.
import type { Id, Policy } from '#document/index.ts';
import { noExpectations } from './expected-parts.ts';
import type { DocumentIndex, Need, Net } from './types.ts';
import { needOf } from './wire-need.ts';
import { stressOf } from './wire-stress.ts';

export interface UnitRails {
  /** The class of the highest rail in one of these units, else of the policy's floor for rails. */
  readonly classFor: (units: readonly Id[]) => RailClass;
}

export interface RailClass {
  readonly classV: number;
  /** "as its unit's highest rail, B+ 285 V". */
  readonly words: string;
}

export function findUnitRails(
  nets: readonly Net[],
  index: DocumentIndex,
  policy: Policy
): UnitRails {
  const floorV = policy.supplyFloorV;
  const floor: RailClass = { classV: floorV, words: 'the floor for supply rails' };
  const highest = new Map<Id, RailClass>();
  let anywhere = floor;
  for (const net of nets) {
    const need = net.isSupply && !net.roles.has('second anode') ? railNeed(net, policy) : null;
    if (!need) continue;
    const rail = { classV: need.requiredV, words: `the highest rail there, ${net.name}` };
    if (rail.classV >= anywhere.classV) anywhere = rail;
    for (const unit of unitsOf(net, index)) {
      const known = highest.get(unit) ?? floor;
      if (rail.classV >= known.classV) highest.set(unit, rail);
    }
  }
  return {
    classFor: (units) => {
      // A wire with no end found may lead anywhere.
      if (units.length === 0) return anywhere;
      return units
        .map((unit) => highest.get(unit) ?? floor)
        .reduce((worst, rail) => (rail.classV >= worst.classV ? rail : worst), floor);
    }
  };
}

/** By its direct volts: ripple and pulses on it are the affair of its own wires. */
const railNeed = ({ dcV, coldDcV }: Net, policy: Policy): Need | null =>
  needOf(stressOf({ dcV, coldDcV, acV: null, pulseV: null }, noExpectations), true, policy);

function unitsOf(net: Net, index: DocumentIndex): ReadonlySet<Id> {
  const units = new Set<Id>();
  for (const key of net.terminals) {
    const entry = index.terminalByKey.get(key);
    if (entry) units.add(entry.part.unit);
  }
  return units;
}
