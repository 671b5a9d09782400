// What the solved circuits say of each net: its volts as figures with their basis, and with a doubt where
// something that nobody described may change them.
import { roundSignificant } from '#quantity/index.ts';
import { isSameAmount } from '../amounts.ts';
import type { GroupedNets, NetGroup } from '../group-nets.ts';
import type { Points } from '../points.ts';
import { patchMap } from '../same.ts';
import type { Amount } from '../types.ts';
import type { CircuitName } from './branches.ts';
import type { Region, RegionAt } from './regions.ts';
import { islandAt, largestVolts, type SolvedCircuit, type SolvedIsland } from './solve-circuits.ts';
import { doubtWords, feedWords, openEndWords } from './words.ts';

export interface NetFigures {
  readonly dcV: Amount | null;
  readonly coldDcV: Amount | null;
  readonly acV: Amount | null;
}

export type FiguresOf = ReadonlyMap<NetGroup, NetFigures>;

export interface FiguresInputs {
  readonly circuits: Readonly<Record<CircuitName, SolvedCircuit>>;
  readonly regions: Readonly<Record<CircuitName, RegionAt>>;
  readonly points: Points;
  readonly nets: GroupedNets;
}

/** The solved volts of the nets that the circuits tell something of.
 *  @param touched nets to look at; all where it is left out
 *  @param before given again for nets that are not touched, and for those that come out the same */
export function listNetFigures(
  inputs: FiguresInputs,
  touched: ReadonlySet<NetGroup> | undefined,
  before: FiguresOf | undefined
): FiguresOf {
  const { groups, byId } = inputs.nets;
  const all = touched ?? new Set([...groups, ...(before?.keys() ?? [])]);
  return patchMap(before, all, (net, was) => {
    if (net.isChassis || byId.get(net.id) !== net) return undefined;
    const now = figuresOf(net, inputs);
    return now && was && isSame(was, now) ? was : now;
  });
}

const isSame = (a: NetFigures, b: NetFigures): boolean =>
  isSameAmount(a.dcV, b.dcV) && isSameAmount(a.coldDcV, b.coldDcV) && isSameAmount(a.acV, b.acV);

interface Field {
  readonly circuit: CircuitName;
  /** Less than that is nought: drops along returns, contact potentials, hum, V. */
  readonly leastV: number;
  readonly words: string;
}

const dcField: Field = {
  circuit: 'loaded',
  leastV: 0.05,
  words: 'reckoned through the circuit from'
};
const coldField: Field = {
  circuit: 'cold',
  leastV: 0.05,
  words: 'before the tubes draw, reckoned through the circuit from'
};
const acField: Field = { circuit: 'ac', leastV: 0.001, words: 'reckoned through the circuit from' };

function figuresOf(net: NetGroup, inputs: FiguresInputs): NetFigures | undefined {
  const dcV = amountOf(net, inputs, dcField);
  const coldDcV = amountOf(net, inputs, coldField);
  const acV = amountOf(net, inputs, acField);
  return dcV || coldDcV || acV ? { dcV, coldDcV, acV } : undefined;
}

/** Volts of an island that floats are counted from one of its own points, and say nothing to chassis. */
const isToChassis = ({ solution, touchesChassis, held }: SolvedIsland): boolean =>
  solution !== null && solution.shorted.length === 0 && (touchesChassis || held.size > 0);

/** The region of a net; that of a point at fixed volts, where it has one: its wires lose next to nothing. */
export function regionOf(
  { points: own }: NetGroup,
  regionAt: RegionAt,
  { rootOf }: Points
): Region | undefined {
  let found: Region | undefined;
  for (const point of own) {
    const region = regionAt(rootOf[point] ?? point);
    if (region && (!found || region.open.length < found.open.length)) found = region;
  }
  return found;
}

/** The island that a net lies in: all of its points hang together by its wires. */
function islandOf(
  { points: own }: NetGroup,
  circuit: SolvedCircuit,
  { rootOf }: Points
): SolvedIsland | undefined {
  for (const point of own) {
    const island = islandAt(circuit, rootOf[point] ?? point);
    if (island) return island;
  }
  return undefined;
}

function amountOf(
  net: NetGroup,
  { circuits, regions, points }: FiguresInputs,
  { circuit, leastV, words }: Field
): Amount | null {
  const island = islandOf(net, circuits[circuit], points);
  if (!island?.solution || !isToChassis(island)) return null;
  const region = regionOf(net, regions[circuit], points);
  // Where nothing feeds it there is nothing to reckon from.
  if (!region || (region.sources.length === 0 && region.held.length === 0)) return null;
  const volts = largestVolts(net, points, island.solution);
  if (volts === null) return null;
  const exact = Math.abs(volts) < leastV ? 0 : roundSignificant(volts);
  // Plates and screens only pull a rail down: without them the figure is the most it can be.
  const doubtful = region.open.filter(({ effect }) => effect !== 'draws');
  // Nought with something left open is nothing known, and no ac is not worth a figure.
  if (exact === 0 && (circuit === 'ac' || doubtful.length > 0)) return null;
  const isMost = region.open.length > 0 && doubtful.length === 0;
  const most = isMost ? `, at most: ${openEndWords(region.open)} counted as drawing nothing` : '';
  return {
    value: circuit === 'ac' ? Math.abs(exact) : exact,
    how: 'solved',
    basis: `${words} ${feedWords(region)}${most}`,
    ...(doubtful.length > 0 ? { doubt: doubtWords(doubtful) } : {})
  };
}
