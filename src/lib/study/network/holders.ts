// What is held of each circuit: declared volts that the circuit does not come to by itself.
import type { NetGroup } from '../group-nets.ts';
import type { HeldNet } from './solve-island.ts';
import {
  largestVolts,
  noneHeld,
  type Disagreement,
  type Ground,
  type Holder
} from './solve-circuits.ts';

/** A declared voltage is confirmed by one within a tenth of it, or within one volt. */
export const agrees = (declaredV: number, solvedV: number): boolean =>
  Math.abs(declaredV - solvedV) <=
  Math.max(1, 0.1 * Math.max(Math.abs(declaredV), Math.abs(solvedV)));

/** Nets that a rectifier charges. */
type Charged = ReadonlySet<NetGroup>;

/** For the loaded circuit: a net is held where its own circuit does not confirm what is declared. */
export const holdLoaded = ({ points, declared }: Ground, charged: Charged): Holder => ({
  hold: (island, free, sources) => {
    const held = new Map<NetGroup, HeldNet>();
    const disagreements: Disagreement[] = [];
    for (const net of island.groups) {
      const amount = declared.get(net)?.dcV;
      if (net.isChassis || !amount) continue;
      const own = island.touchesChassis ? free() : null;
      const solvedV = own && largestVolts(net, points, own);
      if (solvedV !== null && agrees(amount.value, solvedV)) continue;
      held.set(net, { net, amount, feed: null });
      // What a rectifier gives under load is for people to say.
      if (solvedV !== null && sources.length > 0 && !charged.has(net)) {
        disagreements.push({ net, declared: amount, solvedV });
      }
    }
    return { held, disagreements };
  },
  on: (net) => [declared.get(net)?.dcV, charged.has(net)],
  inputs: [declared, charged]
});

/** For the cold circuit: what is held loaded stands there cold too, save where a rectifier gives it.
 *  @param holds everything held in the loaded circuit */
export function holdCold(holds: readonly HeldNet[], charged: Charged): Holder {
  const holdOf = new Map(
    holds.flatMap((hold) => (charged.has(hold.net) ? [] : [[hold.net, hold] as const]))
  );
  const holdsOn = (groups: readonly NetGroup[]): readonly HeldNet[] =>
    groups.map((net) => holdOf.get(net)).filter((hold) => hold !== undefined);
  return {
    hold: ({ groups }) => ({
      held: new Map(holdsOn(groups).map((hold) => [hold.net, hold])),
      disagreements: []
    }),
    on: (net) => [holdOf.get(net)?.amount],
    inputs: [holds, charged]
  };
}

/** For ac: what people declare of signals is no matter of the line, and phases are not declared. So a
 *  net is held only where it is the one declared net of an island that feeds heaters, has no source
 *  and returns to the chassis.
 *  @param feedOf the point where a net is fed, where that is known */
export const holdAc = (
  { points, declared }: Ground,
  feedOf: (net: NetGroup) => number | null
): Holder => ({
  hold: (island, _free, sources) => {
    const said = island.groups.filter((net) => !net.isChassis && declared.get(net)?.acV);
    const [only] = said;
    const amount = only && declared.get(only)?.acV;
    const heats = island.branches.some(({ element }) => element?.values.kind === 'heater');
    const isClear = sources.length === 0 && said.length === 1 && island.touchesChassis && heats;
    if (!only || !amount || !isClear) return { held: noneHeld, disagreements: [] };
    const hold: HeldNet = { net: only, amount, feed: feedOf(only) };
    return { held: new Map([[only, hold]]), disagreements: [] };
  },
  on: (net) => {
    const acV = declared.get(net)?.acV;
    return acV ? [acV, feedOf(net)] : [];
  },
  inputs: [declared, points.source.parts]
});
