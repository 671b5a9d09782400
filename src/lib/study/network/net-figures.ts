// What the solved circuits say of each net: its volts as figures with their basis, and with a doubt where
// something that nobody described may change them.
import { roundSignificant } from '#quantity/index.ts';
import { isSameAmount } from '../amounts.ts';
import type { NetGroup } from '../group-nets.ts';
import type { Points } from '../points.ts';
import type { Amount } from '../types.ts';
import type { CircuitName } from './branches.ts';
import type { Region, Regions } from './regions.ts';
import { largestVolts, type SolvedCircuit, type SolvedIsland } from './solve-circuits.ts';
import { doubtWords, feedWords, openEndWords } from './words.ts';

export interface NetFigures {
  readonly dcV: Amount | null;
  readonly coldDcV: Amount | null;
  readonly acV: Amount | null;
}

export type FiguresOf = ReadonlyMap<NetGroup, NetFigures>;

interface Field {
  readonly circuit: CircuitName;
  readonly field: keyof NetFigures;
  /** Less than that is nought: drops along returns, contact potentials, hum, V. */
  readonly leastV: number;
  readonly words: string;
}

const fields: readonly Field[] = [
  { circuit: 'loaded', field: 'dcV', leastV: 0.05, words: 'reckoned through the circuit from' },
  {
    circuit: 'cold',
    field: 'coldDcV',
    leastV: 0.05,
    words: 'before the tubes draw, reckoned through the circuit from'
  },
  { circuit: 'ac', field: 'acV', leastV: 0.001, words: 'reckoned through the circuit from' }
];

/** The solved volts of the nets that the circuits tell something of. A net that came out as before has
 *  the same object as before. */
export function listNetFigures(
  circuits: Readonly<Record<CircuitName, SolvedCircuit>>,
  regions: Readonly<Record<CircuitName, Regions>>,
  points: Points,
  before?: FiguresOf
): FiguresOf {
  const figures = new Map<NetGroup, { -readonly [K in keyof NetFigures]: NetFigures[K] }>();
  for (const field of fields) {
    for (const island of circuits[field.circuit].islands) {
      if (!isToChassis(island)) continue;
      for (const net of island.groups) {
        if (net.isChassis) continue;
        const amount = amountOf(net, island, regions[field.circuit], field, points);
        if (!amount) continue;
        const known = figures.get(net) ?? { dcV: null, coldDcV: null, acV: null };
        known[field.field] = amount;
        figures.set(net, known);
      }
    }
  }
  const kept = new Map<NetGroup, NetFigures>();
  for (const [net, now] of figures) {
    const was = before?.get(net);
    kept.set(net, was && isSame(was, now) ? was : now);
  }
  return kept;
}

const isSame = (a: NetFigures, b: NetFigures): boolean =>
  isSameAmount(a.dcV, b.dcV) && isSameAmount(a.coldDcV, b.coldDcV) && isSameAmount(a.acV, b.acV);

/** Volts of an island that floats are counted from one of its own points, and say nothing to chassis. */
const isToChassis = ({ solution, touchesChassis, held }: SolvedIsland): boolean =>
  solution !== null && solution.shorted.length === 0 && (touchesChassis || held.size > 0);

/** The region of a net; that of a point at fixed volts, where it has one: its wires lose next to nothing. */
export function regionOf(
  { points: own }: NetGroup,
  regions: Regions,
  { rootOf }: Points
): Region | undefined {
  let found: Region | undefined;
  for (const point of own) {
    const region = regions.at(rootOf[point] ?? point);
    if (region && (!found || region.open.length < found.open.length)) found = region;
  }
  return found;
}

function amountOf(
  net: NetGroup,
  { solution }: SolvedIsland,
  regions: Regions,
  { field, leastV, words }: Field,
  points: Points
): Amount | null {
  const region = regionOf(net, regions, points);
  // Where nothing feeds it there is nothing to reckon from.
  if (!region || (region.sources.length === 0 && region.held.length === 0)) return null;
  const volts = solution && largestVolts(net, points, solution);
  if (volts === null) return null;
  const exact = Math.abs(volts) < leastV ? 0 : roundSignificant(volts);
  // Plates and screens only pull a rail down: without them the figure is the most it can be.
  const doubtful = region.open.filter(({ effect }) => effect !== 'draws');
  // Nought with something left open is nothing known, and no ac is not worth a figure.
  if (exact === 0 && (field === 'acV' || doubtful.length > 0)) return null;
  const isMost = region.open.length > 0 && doubtful.length === 0;
  const most = isMost ? `, at most: ${openEndWords(region.open)} counted as drawing nothing` : '';
  return {
    value: field === 'acV' ? Math.abs(exact) : exact,
    how: 'solved',
    basis: `${words} ${feedWords(region)}${most}`,
    ...(doubtful.length > 0 ? { doubt: doubtWords(doubtful) } : {})
  };
}
