// The current of every wire, with its direction, where the circuit tells.
import type { Id } from '#document/index.ts';
import { roundSignificant } from '#quantity/index.ts';
import { keepFields, patchMap } from '../same.ts';
import type { WireCurrent } from '../types.ts';
import type { CircuitName, PlacedBranch } from './branches.ts';
import type { OpenEnd } from './open-ends.ts';
import type { Region, RegionAt } from './regions.ts';
import type { ShortedSource } from './shorted-sources.ts';
import { islandAt, type SolvedCircuit } from './solve-circuits.ts';
import { doubtWords, feedWords } from './words.ts';

export type CurrentsOf = ReadonlyMap<Id, WireCurrent>;

/** Less than a nanoampere is rounding. */
const leastA = 1e-9;

interface Part {
  readonly amps: number;
  readonly region: Region | undefined;
}

export interface CurrentsInputs {
  readonly circuits: Readonly<Record<CircuitName, SolvedCircuit>>;
  readonly regions: Readonly<Record<CircuitName, RegionAt>>;
  readonly ofWire: ReadonlyMap<Id, PlacedBranch>;
  /** Sources that cannot be right: what flows round them is no current of the set. */
  readonly shorted: readonly ShortedSource[];
  /** What nobody described anywhere: on the chassis the currents of all come together. */
  readonly openEnds: readonly OpenEnd[];
}

/** Currents by wire; a wire of which the circuit tells nothing is not in it.
 *  @param touched wires to look at; all where it is left out */
export function listCurrents(
  inputs: CurrentsInputs,
  touched: ReadonlySet<Id> | undefined,
  before: CurrentsOf | undefined
): CurrentsOf {
  const { ofWire, openEnds } = inputs;
  const wrong = new Set(
    inputs.shorted.flatMap(({ element, against }) => [element.id, against?.id])
  );
  const part = (name: 'loaded' | 'ac', branch: PlacedBranch): Part | null =>
    partOf(name, branch, inputs, wrong);
  const all = touched ?? new Set([...ofWire.keys(), ...(before?.keys() ?? [])]);
  return patchMap(before, all, (wire, was) => {
    const branch = ofWire.get(wire);
    const now = branch && currentOf(part('loaded', branch), part('ac', branch), openEnds);
    return now ? keepFields(was, now) : undefined;
  });
}

function partOf(
  name: 'loaded' | 'ac',
  { branch, from, to }: PlacedBranch,
  { circuits, regions }: CurrentsInputs,
  wrong: ReadonlySet<string | undefined>
): Part | null {
  const circuit = circuits[name];
  const island = islandAt(circuit, from) ?? islandAt(circuit, to);
  if (island?.sources.some(({ element }) => wrong.has(element?.id))) return null;
  const solution = island?.solution;
  const amps = solution && solution.shorted.length === 0 ? solution.ampsOf(branch.id) : null;
  if (amps === null) return null;
  const region = regions[name](from) ?? regions[name](to);
  return { amps: Math.abs(amps) < leastA ? 0 : roundSignificant(amps), region };
}

function currentOf(
  dc: Part | null,
  ac: Part | null,
  openEnds: readonly OpenEnd[]
): WireCurrent | null {
  if (!dc && !ac) return null;
  const open = [dc, ac]
    .map((part) => (part ? (part.region?.open ?? openEnds) : []))
    .find((ends) => ends.length > 0);
  const amps = roundSignificant(Math.hypot(dc?.amps ?? 0, ac?.amps ?? 0));
  // Nothing reckoned where something is not described is nothing known.
  if (amps === 0 && open) return null;
  const larger = Math.abs(ac?.amps ?? 0) > Math.abs(dc?.amps ?? 0) ? ac : dc;
  const feeds = [dc, ac].flatMap((part) =>
    part?.region && part.amps !== 0 ? [feedWords(part.region)] : []
  );
  const from = feeds.length === 0 ? '' : ` from ${[...new Set(feeds)].join(' and ')}`;
  return {
    dcA: dc?.amps ?? null,
    acA: ac?.amps ?? null,
    amps,
    flows: !larger || larger.amps === 0 ? null : larger.amps > 0 ? 'from to to' : 'to to from',
    basis: `reckoned through the circuit${from}`,
    ...(open ? { doubt: doubtWords(open) } : {})
  };
}
