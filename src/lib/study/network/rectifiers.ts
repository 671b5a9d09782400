// Rectifiers: current goes from their first terminal to their second. What they give under load depends
// on more than a drawing tells, so that is for people to declare; before the tubes draw it is the peak of
// what they are fed with.
import type { Policy } from '#document/index.ts';
import { roundSignificant } from '#quantity/index.ts';
import type { PlacedElement } from '../circuit-elements.ts';
import type { NetGroup } from '../group-nets.ts';
import type { Points } from '../points.ts';
import type { Potentials } from '../potentials.ts';
import { sameFields } from '../same.ts';
import { nodeName, type PlacedBranch } from './branches.ts';

/** Nets that a rectifier charges: the side of it on which no winding stands. */
export function rectifiedNets(
  elements: readonly PlacedElement[],
  potentials: Potentials
): ReadonlySet<NetGroup> {
  const nets = new Set<NetGroup>();
  for (const element of elements) {
    const fed = feedOf(element, potentials);
    if (fed) nets.add(fed.output);
  }
  return nets;
}

interface Feed {
  readonly output: NetGroup;
  readonly point: number;
  /** Peak volts of the side that is fed, with the sign that the rectifier lets through. */
  readonly peakV: number;
}

function feedOf(element: PlacedElement, potentials: Potentials): Feed | null {
  const { values, from, to, fromPoint, toPoint } = element;
  if (values.kind !== 'rectifier' || from === to) return null;
  const [a, b] = [potentials.get(from), potentials.get(to)];
  const peak = (net: NetGroup): number => (potentials.get(net)?.acV?.value ?? 0) * Math.SQRT2;
  // A winding that floats is counted from either side: what such a rectifier charges nobody can tell.
  const isFed = (one: typeof a) => one?.acV?.how === 'part' && !one.acFloats;
  if (!from.isChassis && isFed(a) && !isFed(b)) {
    return to.isChassis ? null : { output: to, point: toPoint, peakV: peak(from) };
  }
  if (!to.isChassis && isFed(b) && !isFed(a)) {
    return from.isChassis ? null : { output: from, point: fromPoint, peakV: -peak(to) };
  }
  return null;
}

/** What rectifiers hold their outputs at before the tubes draw, at high line, as sources from the
 *  chassis: one for each point, the largest.
 *  @param before given again where nothing changed */
export function rectifierSources(
  elements: readonly PlacedElement[],
  potentials: Potentials,
  points: Points,
  { highLine }: Policy,
  before: ReadonlyMap<string, PlacedBranch> | undefined
): ReadonlyMap<string, PlacedBranch> {
  const chassis = points.rootOf[points.chassis] ?? points.chassis;
  const sources = new Map<string, PlacedBranch>();
  for (const element of elements) {
    const feed = feedOf(element, potentials);
    if (!feed) continue;
    const volts = roundSignificant(feed.peakV * (1 + highLine));
    const id = `rectified ${feed.point}`;
    const known = sources.get(id)?.branch;
    if (known?.kind === 'source' && Math.abs(known.volts) >= Math.abs(volts)) continue;
    const ends = { from: nodeName(chassis), to: nodeName(feed.point) };
    const branch = { kind: 'source', id, ...ends, volts, ohms: 0 } as const;
    const was = before?.get(id);
    const isSame =
      was?.element?.id === element.id &&
      was.element.part === element.part &&
      sameFields(was.branch, branch);
    sources.set(id, isSame ? was : { branch, from: feed.point, to: chassis, element });
  }
  return sources;
}
