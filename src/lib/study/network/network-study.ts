// What the study tells of the solved network to those who read it: volts of any terminal, the state of
// any element, and what is wrong with the circuit as it stands in the document.
import { roundSignificant } from '#quantity/index.ts';
import type { PlacedElement } from '../circuit-elements.ts';
import type { GroupedNets } from '../group-nets.ts';
import type { Points } from '../points.ts';
import type { Amount, ElementState, TerminalVolts } from '../types.ts';
import type { BranchElement, CircuitName } from './branches.ts';
import { regionOf } from './net-figures.ts';
import type { ShortedSource } from './shorted-sources.ts';
import { islandAt, noneHeld, type SolvedIsland } from './solve-circuits.ts';
import { findRegions } from './regions.ts';
import type { SolvedNetwork } from './solve-chassis.ts';
import { doubtWords, feedWords, openEndWords } from './words.ts';

/** Declared volts that the circuit does not come to. */
export interface VoltsDisagreement {
  /** Net id. */
  readonly net: string;
  readonly declared: Amount;
  readonly solvedV: number;
  /** "V17 and T2": what feeds the circuit. */
  readonly fedBy: string;
  /** The highest source that feeds it, V. */
  readonly highestV: number;
  /** What nobody described there, in words; empty where all is described. */
  readonly open: string;
}

/** Sources whose circuit has no path to the chassis. */
export interface FloatingIsland {
  readonly kind: 'dc' | 'ac';
  readonly sources: readonly PlacedElement[];
  /** Nets of the island, ids. */
  readonly nets: readonly string[];
  /** The net that its volts are counted from. */
  readonly countedFrom: string;
}

/** Loads that nothing feeds, or not enough. */
export interface StarvedLoads {
  readonly loads: readonly BranchElement[];
  /** Something feeds them, but what stands between lets too little through. */
  readonly isFed: boolean;
  readonly fedBy: string;
}

export interface NetworkStudy {
  /** Volts at a terminal, by its key. */
  readonly voltsAt: (key: string) => TerminalVolts;
  readonly stateOf: (element: PlacedElement) => ElementState;
  readonly disagreements: readonly VoltsDisagreement[];
  readonly shorted: readonly ShortedSource[];
  readonly floating: readonly FloatingIsland[];
  readonly starved: readonly StarvedLoads[];
}

const unknownVolts: TerminalVolts = { dcV: null, coldDcV: null, acV: null, countedFrom: null };

export function reportNetwork(
  network: SolvedNetwork,
  points: Points,
  nets: GroupedNets,
  elements: readonly PlacedElement[],
  netNameAt: (point: number) => string
): NetworkStudy {
  const { circuits, regions } = network;
  const chassis = points.rootOf[points.chassis] ?? points.chassis;
  const islandOf = (name: CircuitName, point: number) => islandAt(circuits[name], point);
  const voltsIn = (name: CircuitName, point: number): number | null => {
    const volts = islandOf(name, point)?.solution?.voltsAt(point);
    if (point === chassis) return 0;
    return volts === undefined || volts === null ? null : roundSignificant(volts);
  };
  const voltsAt = (key: string): TerminalVolts => {
    const number = points.source.parts.terminalByKey.get(key)?.number;
    const point = number === undefined ? undefined : points.rootOf[number];
    if (point === undefined) return unknownVolts;
    const loaded = islandOf('loaded', point);
    const origin = loaded?.solution?.origin ?? null;
    return {
      dcV: voltsIn('loaded', point),
      coldDcV: voltsIn('cold', point),
      // Of an island that floats only differences are known.
      acV: islandOf('ac', point)?.solution?.origin == null ? voltsIn('ac', point) : null,
      countedFrom: origin === null ? null : netNameAt(origin)
    };
  };
  const across = (name: CircuitName, { fromPoint, toPoint }: PlacedElement): number | null => {
    const [from, to] = [voltsIn(name, fromPoint), voltsIn(name, toPoint)];
    return from === null || to === null ? null : roundSignificant(from - to);
  };
  const stateOf = (element: PlacedElement): ElementState => {
    const dcV = across('loaded', element);
    const acV = across('ac', element);
    const ampsIn = (name: CircuitName): number | null =>
      islandOf(
        name,
        element.fromPoint === chassis ? element.toPoint : element.fromPoint
      )?.solution?.ampsOf(element.id) ?? null;
    const ends = (['loaded', 'ac'] as const).flatMap(
      (name) => (regions[name](element.fromPoint) ?? regions[name](element.toPoint))?.open ?? []
    );
    return {
      dcV,
      acV,
      volts: together(dcV, acV),
      amps: together(ampsIn('loaded'), ampsIn('ac')),
      doubt: ends.length === 0 ? null : doubtWords([...new Set(ends)])
    };
  };
  // A winding whose dc stands somewhere, as a rectifier's filament does, is not loose.
  const isLoose = ({ points: own }: SolvedIsland): boolean =>
    own.every((point) => {
      const island = islandOf('loaded', point);
      return !island || !(island.touchesChassis || island.held.size > 0);
    });
  return {
    voltsAt,
    stateOf,
    shorted: network.shorted,
    disagreements: listDisagreements(network, points, nets),
    floating: [
      ...floatingIn('dc', circuits.loaded.islands.filter(isAfloat), points, elements),
      ...floatingIn(
        'ac',
        circuits.ac.islands.filter((island) => isAfloat(island) && isLoose(island)),
        points,
        elements
      )
    ],
    starved: circuits.loaded.islands.flatMap(starvedOn)
  };
}

function listDisagreements(
  network: SolvedNetwork,
  points: Points,
  nets: GroupedNets
): readonly VoltsDisagreement[] {
  return network.circuits.loaded.islands.flatMap((island) => {
    const { disagreements } = island;
    if (disagreements.length === 0) return [];
    // As it is with nothing held: that is what stands against a declared voltage.
    const free = { ...island, held: noneHeld };
    const regionAt = findRegions('loaded', free, network.known, nets.groupAt);
    return disagreements.map(({ net, declared, solvedV }) => {
      const { sources = [], open = [] } = regionOf(net, regionAt, points) ?? {};
      return {
        net: net.id,
        declared,
        solvedV: roundSignificant(solvedV),
        fedBy: feedWords({ sources, held: [] }),
        highestV: highestSourceV(sources),
        open: openEndWords(open)
      };
    });
  });
}

const together = (dc: number | null, ac: number | null): number | null =>
  dc === null && ac === null ? null : roundSignificant(Math.hypot(dc ?? 0, ac ?? 0));

const highestSourceV = (sources: SolvedIsland['sources']): number =>
  Math.max(
    0,
    ...sources.map(({ branch }) => (branch.kind === 'source' ? Math.abs(branch.volts) : 0))
  );

const isAfloat = ({ touchesChassis, held, sources }: SolvedIsland): boolean =>
  !touchesChassis && held.size === 0 && sources.length > 0;

function floatingIn(
  kind: 'dc' | 'ac',
  islands: readonly SolvedIsland[],
  points: Points,
  all: readonly PlacedElement[]
): readonly FloatingIsland[] {
  return islands.map((island) => {
    const { sources, groups, solution } = island;
    const origin = solution?.origin ?? island.points[0] ?? points.chassis;
    const from = groups.find((net) => net.points.some((point) => points.rootOf[point] === origin));
    const ids = new Set(sources.map(({ element }) => element?.id));
    const elements = all.filter(({ id }) => ids.has(id));
    const nets = groups.map(({ id }) => id);
    return { kind, sources: elements, nets, countedFrom: (from ?? groups[0])?.id ?? '' };
  });
}

const starvedOf = new WeakMap<SolvedIsland, readonly StarvedLoads[]>();

function starvedOn(island: SolvedIsland): readonly StarvedLoads[] {
  const known = starvedOf.get(island);
  if (known) return known;
  const found = findStarved(island);
  starvedOf.set(island, found);
  return found;
}

function findStarved(island: SolvedIsland): readonly StarvedLoads[] {
  const elements = (branches: SolvedIsland['branches']) =>
    branches.map(({ element }) => element).filter((element) => element !== null);
  const fedBy = feedWords({ sources: island.sources, held: [...island.held.values()] });
  if (island.solution) {
    const { starved } = island.solution;
    return starved.length === 0 ? [] : [{ loads: elements(starved), isFed: true, fedBy }];
  }
  const loads = island.branches.filter(({ branch }) => branch.kind === 'load' && branch.amps > 0);
  return loads.length === 0 ? [] : [{ loads: elements(loads), isFed: false, fedBy }];
}
