// The highest class among the conductors of each cable: for one of which nothing is known, since its
// insulation lies against theirs, and it may turn out to be one of them.
import type { Id, Policy } from '#document/index.ts';
import { formatVolts, roundSignificant } from '#quantity/index.ts';
import { keepFields, keepMap } from './same.ts';
import type { LoadedWire } from './study-wire.ts';
import type { RailClass } from './unit-rails.ts';
import { classOfVolts } from './wire-need.ts';

export type CableClasses = ReadonlyMap<Id, RailClass>;

/** By cable; one in which nothing is known to be live is left out.
 *  @param before given again where it says the same */
export function findCableClasses(
  loaded: ReadonlyMap<Id, LoadedWire>,
  policy: Policy,
  before?: CableClasses
): CableClasses {
  const highest = new Map<Id, LoadedWire['standing']>();
  for (const { alone, standing } of loaded.values()) {
    const { cable } = alone.slot.wire;
    if (cable === undefined || standing.stressV <= (highest.get(cable)?.stressV ?? 0)) continue;
    highest.set(cable, standing);
  }
  const classes = new Map<Id, RailClass>();
  for (const [cable, { stressV, name }] of highest) {
    const words = `${name} in the same cable, ${formatVolts(roundSignificant(stressV, 4))} peak`;
    const classV = classOfVolts(stressV, policy);
    classes.set(cable, keepFields(before?.get(cable), { classV, words }));
  }
  return keepMap(before, classes);
}
