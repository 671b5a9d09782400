// The current of every wire, with its direction, where the circuit tells.
import type { Id } from '#document/index.ts';
import { roundSignificant } from '#quantity/index.ts';
import { keepFields } from '../same.ts';
import type { WireCurrent } from '../types.ts';
import type { CircuitName, PlacedBranch } from './branches.ts';
import type { OpenEnd } from './open-ends.ts';
import type { Region, Regions } from './regions.ts';
import type { SolvedCircuit } from './solve-circuits.ts';
import { doubtWords, feedWords } from './words.ts';

export type CurrentsOf = ReadonlyMap<Id, WireCurrent>;

/** Less than a nanoampere is rounding. */
const leastA = 1e-9;

interface Part {
  readonly amps: number;
  readonly region: Region | undefined;
}

/** Currents by wire; a wire of which the circuit tells nothing is not in it.
 *  @param openEnds what nobody described anywhere: on the chassis the currents of all come together */
export function listCurrents(
  branches: ReadonlyMap<Id, PlacedBranch>,
  circuits: Readonly<Record<CircuitName, SolvedCircuit>>,
  regions: Readonly<Record<CircuitName, Regions>>,
  openEnds: readonly OpenEnd[],
  before?: CurrentsOf
): CurrentsOf {
  const partOf = (name: 'loaded' | 'ac', wire: Id, { from, to }: PlacedBranch): Part | null => {
    const { islandAt } = circuits[name];
    const solution = (islandAt.get(from) ?? islandAt.get(to))?.solution;
    const amps = solution && solution.shorted.length === 0 ? solution.ampsOf(wire) : null;
    if (amps === null) return null;
    const region = regions[name].at(from) ?? regions[name].at(to);
    return { amps: Math.abs(amps) < leastA ? 0 : roundSignificant(amps), region };
  };
  const currents = new Map<Id, WireCurrent>();
  for (const [wire, branch] of branches) {
    const dc = partOf('loaded', wire, branch);
    const ac = partOf('ac', wire, branch);
    const current = currentOf(dc, ac, openEnds);
    if (current) currents.set(wire, keepFields(before?.get(wire), current));
  }
  return currents;
}

function currentOf(
  dc: Part | null,
  ac: Part | null,
  openEnds: readonly OpenEnd[]
): WireCurrent | null {
  const parts = [dc, ac].filter((part) => part !== null);
  const ends = [...new Set(parts.flatMap(({ region }) => region?.open ?? openEnds))];
  const amps = roundSignificant(Math.hypot(dc?.amps ?? 0, ac?.amps ?? 0));
  // Nothing reckoned where something is not described is nothing known.
  if (parts.length === 0 || (amps === 0 && ends.length > 0)) return null;
  const larger = Math.abs(ac?.amps ?? 0) > Math.abs(dc?.amps ?? 0) ? ac : dc;
  const feeds = new Set(
    parts.flatMap(({ amps: own, region }) => (own !== 0 && region ? [feedWords(region)] : []))
  );
  return {
    dcA: dc?.amps ?? null,
    acA: ac?.amps ?? null,
    amps,
    flows: !larger || larger.amps === 0 ? null : larger.amps > 0 ? 'from to to' : 'to to from',
    basis: `reckoned through the circuit${feeds.size > 0 ? ` from ${[...feeds].join(' and ')}` : ''}`,
    ...(ends.length > 0 ? { doubt: doubtWords(ends) } : {})
  };
}
