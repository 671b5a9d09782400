// A wire that is dragged: onto a support to dress it, off one to free it.
import type { Wire } from '#document/index.ts';
import { classBandOf } from '#study/index.ts';
import type { Grip, Held } from '../grip.ts';
import type { Spot, ToolWorld } from '../tool.ts';
import { dressEdit, endsOf, matesOf, withSupport } from './route-wires.ts';

/** So near to a support the wire is taken off it, px; and so near it is put on one. */
const offPx = 26;
const onPx = 12;

const supportNear = (wire: Wire, from: Spot, { scene, pxPerMm }: ToolWorld): string | null => {
  const own = (wire.route?.supports ?? []).flatMap((id) => {
    const at = scene.geometry.places.supports.get(id)?.at;
    return at ? [{ id, far: Math.hypot(at.x - from.x, at.y - from.y) }] : [];
  });
  const nearest = own.toSorted((a, b) => a.far - b.far)[0];
  return nearest && nearest.far <= offPx / pxPerMm ? nearest.id : null;
};

/** The route that letting go here would give, and in words; null: none. */
const goalOf = (
  wire: Wire,
  from: Spot,
  at: Spot,
  world: ToolWorld
): { readonly supports: readonly string[]; readonly words: string } | null => {
  const { scene, pxPerMm } = world;
  const own = wire.route?.supports ?? [];
  const onto = scene.supportAt(at, onPx / pxPerMm);
  if (onto && !own.includes(onto.id)) {
    return { supports: withSupport(scene, wire, onto.id), words: `through ${onto.name}` };
  }
  const off = onto ? null : supportNear(wire, from, world);
  if (off === null || Math.hypot(at.x - from.x, at.y - from.y) * pxPerMm < offPx) return null;
  const name = scene.geometry.places.supports.get(off)?.support.name ?? '';
  return { supports: own.filter((id) => id !== off), words: `off ${name}` };
};

const hold = (wire: Wire, from: Spot, at: Spot): Held => ({
  drag: (event) => hold(wire, from, event.at),
  show: (world) => {
    const { scene, study } = world;
    const goal = goalOf(wire, from, at, world);
    const [start, end] = endsOf(scene, wire);
    const stops = (goal?.supports ?? wire.route?.supports ?? []).flatMap(
      (id) => scene.geometry.places.supports.get(id)?.at ?? []
    );
    const way = [...(start ? [start] : []), ...stops, ...(end ? [end] : [])];
    const spots = goal ? way : bentTo(way, at);
    const band = classBandOf(study.wires.get(wire.id)?.need?.requiredV ?? null);
    const points = spots.flatMap(({ x, y }) => [x, y]);
    return {
      shapes: [{ shape: { kind: 'line', points, round: 3 }, style: `wire.${band}` }],
      hidden: new Set([`wire ${wire.id}`]),
      words: { text: goal?.words ?? 'onto a support, or off one', at },
      cursor: 'grabbing'
    };
  },
  drop: (world) => {
    const goal = goalOf(wire, from, at, world);
    if (!goal) return [{ kind: 'say', words: 'let go on no support: the wire stays' }];
    const edit = dressEdit(world, [wire, ...matesOf(world, wire)], goal.supports);
    return [{ kind: 'edit', edit }];
  }
});

/** The way with the hand in it, where that makes it the least longer. */
const bentTo = (way: readonly Spot[], at: Spot): readonly Spot[] => {
  let best: { readonly n: number; readonly more: number } = { n: 1, more: Infinity };
  for (let n = 1; n < way.length; n += 1) {
    const [a, b] = [way[n - 1] ?? at, way[n] ?? at];
    const more =
      Math.hypot(a.x - at.x, a.y - at.y) +
      Math.hypot(b.x - at.x, b.y - at.y) -
      Math.hypot(a.x - b.x, a.y - b.y);
    if (more < best.more) best = { n, more };
  }
  return way.toSpliced(best.n, 0, at);
};

export const wireGrip: Grip = {
  take: ({ subject, at, touch }, { study, pick }) => {
    if (subject?.kind !== 'wire') return null;
    if (touch && (pick?.kind !== 'wire' || pick.id !== subject.id)) return null;
    const wire = study.index.wires.find(({ id }) => id === subject.id);
    return wire ? hold(wire, at, at) : null;
  }
};
