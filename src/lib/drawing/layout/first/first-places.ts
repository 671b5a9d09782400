// Where parts begin: elk's layered layout of each unit by itself, parts in layers along the signal in the order
// that crosses least. What leaves a unit is drawn to a point on the side that it leaves by. Only the places are
// taken, as shares of elk's own sheet: the packing brings them close together afterwards.
// Source: the layered method of Sugiyama, Tagawa, Toda, IEEE Trans. SMC 11, 1981, as elkjs offers it.
import type { Id } from '#document/index.ts';
import type { ElkEdge, ElkGraph, LayoutEngine } from './layout-engine.ts';

export interface FirstPart {
  readonly id: Id;
  /** With the room beside it, in any one unit of length. */
  readonly width: number;
  readonly height: number;
}

export interface FirstLine {
  /** The one that the signal comes from first. */
  readonly from: Id;
  readonly to: Id;
}

/** The middle of a part, as shares of the unit's width and height: 0 to 1. */
export interface Share {
  readonly x: number;
  readonly y: number;
}

/** Units from left to right: the parts of each, and all lines. */
export interface FirstTask {
  readonly units: readonly (readonly FirstPart[])[];
  readonly lines: readonly FirstLine[];
}

const sheetOptions: Readonly<Record<string, string>> = {
  'elk.algorithm': 'layered',
  'elk.direction': 'RIGHT',
  'elk.edgeRouting': 'POLYLINE',
  'elk.layered.thoroughness': '7',
  'elk.layered.nodePlacement.strategy': 'BRANDES_KOEPF',
  'elk.separateConnectedComponents': 'false'
};
const exits = { left: 'exit left', right: 'exit right' } as const;
const exitOf = (side: keyof typeof exits): ElkGraph => ({
  id: exits[side],
  width: 1,
  height: 1,
  layoutOptions: {
    'elk.layered.layering.layerConstraint': side === 'left' ? 'FIRST' : 'LAST'
  }
});

/** One unit as elk takes it. Lines between the same two parts are one, which weighs as much as all of them. */
const graphOf = ({ units, lines }: FirstTask, unit: number): ElkGraph => {
  const unitOf = new Map(units.flatMap((parts, index) => parts.map(({ id }) => [id, index])));
  const nodeOf = (id: Id): string | null => {
    const home = unitOf.get(id);
    if (home === undefined) return null;
    return home === unit ? id : home < unit ? exits.left : exits.right;
  };
  const weights = new Map<string, { from: string; to: string; count: number }>();
  for (const line of lines) {
    const [from, to] = [nodeOf(line.from), nodeOf(line.to)];
    if (from === null || to === null || from === to) continue;
    const isOutside = [from, to].every((id) => id === exits.left || id === exits.right);
    if (isOutside) continue;
    // What leaves by the left runs from there, whichever way the signal goes.
    const isTurned = to === exits.left || from === exits.right;
    const [source, target] = isTurned ? [to, from] : [from, to];
    const key = JSON.stringify([source, target]);
    const known = weights.get(key);
    if (known) known.count += 1;
    else weights.set(key, { from: source, to: target, count: 1 });
  }
  const used = new Set([...weights.values()].flatMap(({ from, to }) => [from, to]));
  const edges = [...weights.values()].map(({ from, to, count }, index): ElkEdge => ({
    id: `line ${index}`,
    sources: [from],
    targets: [to],
    layoutOptions: { 'elk.layered.priority.direction': String(count) }
  }));
  return {
    id: 'unit',
    layoutOptions: { ...sheetOptions },
    children: [
      ...(units[unit] ?? []).map(({ id, width, height }) => ({ id, width, height })),
      ...(['left', 'right'] as const).filter((side) => used.has(exits[side])).map(exitOf)
    ],
    edges
  };
};

const sharesOf = ({ children = [], width = 1, height = 1 }: ElkGraph): Map<Id, Share> =>
  new Map(
    children.map((node) => [
      node.id,
      {
        x: ((node.x ?? 0) + (node.width ?? 0) / 2) / Math.max(1, width),
        y: ((node.y ?? 0) + (node.height ?? 0) / 2) / Math.max(1, height)
      }
    ])
  );

/** Where each part begins. Of a unit that the engine cannot lay out nothing comes back.
 *  @param within holds an answer of the engine to the time and to a stop; what it rejects with is passed on */
export const findFirstPlaces = async (
  task: FirstTask,
  engine: LayoutEngine,
  within: <T>(answer: Promise<T>) => Promise<T>
): Promise<ReadonlyMap<Id, Share>> => {
  const places = new Map<Id, Share>();
  for (const unit of task.units.keys()) {
    const parts = task.units[unit] ?? [];
    if (parts.length < 2) continue;
    // Elk fails on a graph now and then; placing goes on all the same.
    const laid = await within(engine.layout(graphOf(task, unit)).catch(() => null));
    if (laid) for (const [id, share] of sharesOf(laid)) places.set(id, share);
  }
  return places;
};
