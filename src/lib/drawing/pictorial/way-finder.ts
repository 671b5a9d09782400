// Leads one wire, or the wires of one cable, from end to end: out of the terminal clear of the part,
// along the supports, round the parts in between, into the other terminal or a stub.
import type { Id, Wire } from '#document/index.ts';
import { listStops, type WayStop } from '#study/segments.ts';
import { classBandOf, classBands, type Study } from '#study/index.ts';
import type { Spot } from '../presentation/sides.ts';
import { bandLines, styleOf } from '../styles.ts';
import type { CableRun } from './cable-runs.ts';
import type { Exit } from './exits.ts';
import type { SheetPlaces } from './sheet-places.ts';
import type { TautPath, TautPaths } from './taut-path.ts';
import type { TerminalSpot } from './terminal-spots.ts';
import { distance, minus, plus, times, turnBetween, unitOf } from './vectors.ts';
import type { LooseEnd, WayNode, WireWay } from './way.ts';

/** Length of a stub beyond the last place that is known, mm. */
const stubMm = 11;
/** What it costs to leave a terminal away from where the wire goes, mm for half a turn. */
const turnMm = 10;
/** Wires led round one corner make it dearer for the next, mm. */
const crowdMm = 1.5;

interface Start {
  readonly nodes: readonly WayNode[];
  readonly at: Spot;
  readonly out: Spot | null;
}

const startsAt = (spot: TerminalSpot): Start[] => {
  const node: WayNode = { key: spot.key, at: spot.at, kind: 'terminal' };
  if (spot.exits.length === 0) return [{ nodes: [node], at: spot.at, out: null }];
  return spot.exits.map(({ clear, out }: Exit, number) => ({
    nodes: [node, { key: `${spot.key} ${number}`, at: clear, kind: 'clear' }],
    at: clear,
    out
  }));
};

const stopAt = (node: WayNode): Start => ({ nodes: [node], at: node.at, out: null });

const cornerNodes = ({ corners }: TautPath): WayNode[] =>
  corners.map(({ number, at, outward }) => ({
    key: `corner ${number}`,
    at,
    kind: 'corner',
    outward
  }));

export class WayFinder {
  private readonly study: Study;
  private readonly places: SheetPlaces;
  private readonly spots: ReadonlyMap<string, TerminalSpot>;
  private readonly paths: TautPaths;

  constructor(
    study: Study,
    places: SheetPlaces,
    spots: ReadonlyMap<string, TerminalSpot>,
    paths: TautPaths
  ) {
    this.study = study;
    this.places = places;
    this.spots = spots;
    this.paths = paths;
  }

  /** From end to end along the supports, mm: the order in which wires are led. */
  spanOf(wire: Wire): number {
    const { document, index } = this.study;
    const known = listStops(document, index, wire).flatMap((stop) => this.placeOf(stop) ?? []);
    return known.reduce((sum, at, n) => sum + distance(known[n - 1] ?? at, at), 0);
  }

  find(wire: Wire, order: number): WireWay | null {
    const { document, index } = this.study;
    const stops = listStops(document, index, wire);
    const [from, to] = [this.endOf(wire.from), this.endOf(wire.to)];
    if (!from && !to) return null;
    const supports = stops.flatMap((stop): WayNode[] => {
      const placed = stop.kind === 'support' && this.places.supports.get(stop.id);
      return placed ? [{ key: stop.id, at: placed.at, kind: 'support' }] : [];
    });
    const look = this.lookOf(wire, order);
    if (from && to) {
      const same = from.key === to.key && supports.length === 0;
      const nodes = same ? loopAt(from) : this.lead(startsAt(from), supports, startsAt(to));
      return { ...look, nodes, loose: null };
    }
    const known = from ?? to;
    if (!known) return null;
    const way = from ? supports : supports.toReversed();
    const nodes = this.leadStub(wire, startsAt(known), way, from ? wire.to : wire.from);
    const unseen = from ? wire.to : wire.from;
    return { ...look, nodes, loose: this.looseEnd(unseen) };
  }

  /** The ways of a cable's wires: each from its terminal to the mouth, all together under the jacket. */
  findCable(run: CableRun, ranks: ReadonlyMap<Id, number>): WireWay[] {
    const [a, b] = run.mouths.map((at, end): WayNode => ({
      key: `mouth ${run.cable} ${end}`,
      at,
      kind: 'support'
    }));
    if (!a || !b) return [];
    const supports = run.supports.flatMap((id): WayNode[] => {
      const placed = this.places.supports.get(id);
      return placed ? [{ key: id, at: placed.at, kind: 'support' }] : [];
    });
    const middle = this.along([a, ...supports, b]);
    return run.wires.map(({ wire, first, last, reversed }): WireWay => {
      const head = this.cheapest(startsAt(first), [stopAt(a)]).slice(0, -1);
      const tail = this.cheapest([stopAt(b)], startsAt(last)).slice(1);
      const nodes = [...head, ...middle, ...tail];
      const [from, to] = [head.length, head.length + middle.length - 1];
      const end = nodes.length - 1;
      return {
        ...this.lookOf(wire, ranks.get(wire.id) ?? 0),
        nodes: reversed ? nodes.toReversed() : nodes,
        jacket: reversed ? [end - to, end - from] : [from, to],
        loose: null
      };
    });
  }

  private lookOf(wire: Wire, order: number): Pick<WireWay, 'wire' | 'rank' | 'widthMm'> {
    const band = classBandOf(this.study.wires.get(wire.id)?.need?.requiredV ?? null);
    const halo = band === '20k+' ? styleOf('wire.20k+.halo', 'light').width : undefined;
    return {
      wire: wire.id,
      rank: classBands.indexOf(band) * 1e6 + order,
      widthMm: halo ?? bandLines[band].width
    };
  }

  private looseEnd(end: Wire['to']): LooseEnd {
    if (!this.study.index.findAt(end)) return { words: '?', why: 'not found' };
    return { words: `to ${this.study.index.labelOf(end)}`, why: 'no place' };
  }

  private endOf(end: Wire['from']): TerminalSpot | undefined {
    const entry = this.study.index.findAt(end);
    return entry && this.spots.get(entry.key);
  }

  private placeOf(stop: WayStop): Spot | undefined {
    return stop.kind === 'support'
      ? this.places.supports.get(stop.id)?.at
      : this.spots.get(stop.key)?.at;
  }

  /** The cheapest way between the exits of two terminals, along the supports. */
  private lead(
    starts: readonly Start[],
    supports: readonly WayNode[],
    ends: readonly Start[]
  ): WayNode[] {
    const first = supports[0];
    const last = supports.at(-1);
    if (first && last) {
      const head = this.cheapest(starts, [stopAt(first)]);
      const tail = this.cheapest([stopAt(last)], ends);
      return [...head, ...this.along(supports).slice(1), ...tail.slice(1)];
    }
    return this.cheapest(starts, ends);
  }

  /** From each place to the next, round the parts between them. */
  private along(stops: readonly WayNode[]): WayNode[] {
    return stops.flatMap((stop, n) => {
      const before = stops[n - 1];
      return before ? [...this.between(before.at, stop.at), stop] : [stop];
    });
  }

  private between(a: Spot, b: Spot): WayNode[] {
    const path = this.paths.find(a, b);
    this.paths.use(path.corners, crowdMm);
    return cornerNodes(path);
  }

  private cheapest(starts: readonly Start[], ends: readonly Start[]): WayNode[] {
    let best: { nodes: WayNode[]; cost: number; path: TautPath } | null = null;
    for (const start of starts) {
      for (const end of ends) {
        const path = this.paths.find(start.at, end.at);
        const second = path.corners[0]?.at ?? end.at;
        const last = path.corners.at(-1)?.at ?? start.at;
        const cost =
          path.costMm +
          turnCost(start, second) +
          turnCost(end, last) +
          ownLength(start) +
          ownLength(end);
        if (best && cost >= best.cost) continue;
        const nodes = [...start.nodes, ...cornerNodes(path), ...end.nodes.toReversed()];
        best = { nodes, cost, path };
      }
    }
    if (!best) return [];
    this.paths.use(best.path.corners, crowdMm);
    return best.nodes;
  }

  private leadStub(
    wire: Wire,
    starts: readonly Start[],
    supports: readonly WayNode[],
    unseen: Wire['to']
  ): WayNode[] {
    const loose = (at: Spot): WayNode => ({ key: `loose ${wire.id}`, at, kind: 'loose' });
    const last = supports.at(-1);
    if (last) {
      const nodes = this.lead(starts, supports, [stopAt(last)]);
      const before = nodes.findLast(({ key }) => key !== last.key) ?? last;
      const way = unitOf(minus(last.at, before.at));
      return [...nodes, loose(plus(last.at, times(way, stubMm * 1.4)))];
    }
    const goal = this.study.index.findAt(unseen);
    const start = starts[0];
    if (!start) return [];
    const out = start.out ?? (goal ? { x: 1, y: 0 } : { x: Math.SQRT1_2, y: -Math.SQRT1_2 });
    return [...start.nodes, loose(plus(start.at, times(out, stubMm)))];
  }
}

/** A wire that ends where it begins: a short loop, so that it can be seen. */
function loopAt(spot: TerminalSpot): WayNode[] {
  const out = spot.exits[0]?.out ?? { x: 0, y: -1 };
  const tip = plus(spot.at, times(out, stubMm));
  const side = { x: -out.y * 3, y: out.x * 3 };
  return [
    { key: spot.key, at: spot.at, kind: 'terminal' },
    { key: `${spot.key} loop 1`, at: plus(tip, side), kind: 'clear' },
    { key: `${spot.key} loop 2`, at: minus(tip, side), kind: 'clear' },
    { key: spot.key, at: spot.at, kind: 'terminal' }
  ];
}

const ownLength = ({ nodes, at }: Start): number => distance(nodes[0]?.at ?? at, at);

const turnCost = ({ out, at }: Start, next: Spot): number =>
  out ? (Math.abs(turnBetween(out, minus(next, at))) / Math.PI) * turnMm : 0;
