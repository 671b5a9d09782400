// The way of every wire over the sheet. A wire with one end found, or placed, ends in a stub; a wire
// with neither is left to the list of wires that are not drawn.
import type { Id, Wire } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import { listCableRuns } from './cable-runs.ts';
import type { SheetPlaces } from './sheet-places.ts';
import type { TautPaths } from './taut-path.ts';
import type { TerminalSpot } from './terminal-spots.ts';
import type { WireWay } from './way.ts';
import { WayFinder } from './way-finder.ts';

export interface WireWays {
  readonly ways: readonly WireWay[];
  /** Wires with an end that is known but has no place, and wires without any: for the note on the sheet. */
  readonly notDrawn: readonly Wire[];
}

/** Finds the ways of all wires, cables first, then the shortest first, so that later ones make room. */
export function buildWireWays(
  study: Study,
  places: SheetPlaces,
  spots: ReadonlyMap<string, TerminalSpot>,
  paths: TautPaths
): WireWays {
  const finder = new WayFinder(study, places, spots, paths);
  const ranks = new Map(study.index.wires.map(({ id }, rank) => [id, rank]));
  const ways = new Map<Id, WireWay>();
  for (const run of listCableRuns(study, places, spots, (at) => paths.isClear(at))) {
    for (const way of finder.findCable(run, ranks)) ways.set(way.wire, way);
  }
  const jobs = study.index.wires.map((wire, rank) => ({ wire, rank, span: finder.spanOf(wire) }));
  for (const { wire, rank } of jobs.toSorted((a, b) => a.span - b.span)) {
    const way = ways.has(wire.id) ? null : finder.find(wire, rank);
    if (way) ways.set(wire.id, way);
  }
  const notDrawn = study.index.wires.filter(({ id }) => {
    const way = ways.get(id);
    return !way || way.loose?.why === 'no place';
  });
  return { ways: study.index.wires.flatMap(({ id }) => ways.get(id) ?? []), notDrawn };
}
