// Heaters that are in series: a string is a chain of links from net to net, through points where nothing
// else is connected. A link is a heater, a dropper, or several side by side, as a lamp across a tap is.
import type { PlacedElement, Study } from '#study/index.ts';

export interface StringLink {
  readonly heaters: readonly PlacedElement[];
  /** Droppers, where there are no heaters beside them; otherwise shunts. */
  readonly resistors: readonly PlacedElement[];
}

export interface HeaterString {
  /** In their order along the string. */
  readonly links: readonly StringLink[];
  readonly heaters: readonly PlacedElement[];
}

interface Link extends StringLink {
  readonly a: string;
  readonly b: string;
}

const strings = new WeakMap<Study, readonly HeaterString[]>();

/** All strings in which the heaters of two tubes and more are in series. */
export function findHeaterStrings(study: Study): readonly HeaterString[] {
  const known = strings.get(study);
  if (known) return known;
  const found = listStrings(study, listLinks(study));
  strings.set(study, found);
  return found;
}

interface OpenLink {
  readonly a: string;
  readonly b: string;
  readonly heaters: PlacedElement[];
  readonly resistors: PlacedElement[];
}

/** Heaters and the resistors among them, those between the same two nets as one link. */
function listLinks(study: Study): readonly Link[] {
  const byNets = new Map<string, OpenLink>();
  for (const element of study.elements) {
    const { values, from, to, part } = element;
    const isDropper = values.kind === 'resistor' && /^(resistor|lamp)$/.test(part.kind);
    if ((values.kind !== 'heater' && !isDropper) || from === to) continue;
    const [a, b] = from.id < to.id ? [from.id, to.id] : [to.id, from.id];
    const key = `${a} ${b}`;
    const link = byNets.get(key) ?? { a, b, heaters: [], resistors: [] };
    byNets.set(key, link);
    if (values.kind === 'heater') link.heaters.push(element);
    else link.resistors.push(element);
  }
  return [...byNets.values()];
}

/** A resistor of more than that is no dropper: it belongs to another circuit, ohm. */
const mostDropperOhms = 5000;

const mayDrop = ({ heaters, resistors }: Link): boolean =>
  heaters.length > 0 ||
  resistors.every(({ values }) => values.kind === 'resistor' && values.ohms < mostDropperOhms);

function listStrings(study: Study, links: readonly Link[]): readonly HeaterString[] {
  const at = new Map<string, Link[]>();
  for (const link of links) {
    for (const net of [link.a, link.b]) {
      const known = at.get(net);
      if (known) known.push(link);
      else at.set(net, [link]);
    }
  }
  const fed = netsThatFeed(study);
  // A string passes through a net where two links meet and nothing feeds or returns.
  const passes = (net: string): boolean => {
    const here = at.get(net) ?? [];
    const isEnd = fed.has(net) || study.nets.get(net)?.isChassis === true;
    return here.length === 2 && !isEnd && here.every(mayDrop);
  };
  const seen = new Set<Link>();
  const found: HeaterString[] = [];
  for (const link of links) {
    if (seen.has(link) || link.heaters.length === 0) continue;
    seen.add(link);
    const before = walk(link, link.a, at, passes, seen);
    const after = walk(link, link.b, at, passes, seen);
    const all = [...before.reverse(), link, ...after];
    const heaters = all.flatMap((each) => each.heaters);
    // Side by side is not in series: what counts is that more than one link has tubes of its own.
    const tubes = new Set(all.flatMap((each) => each.heaters.slice(0, 1)).map(({ part }) => part));
    if (tubes.size > 1) found.push({ links: all, heaters });
  }
  return found;
}

function walk(
  start: Link,
  from: string,
  at: ReadonlyMap<string, readonly Link[]>,
  passes: (net: string) => boolean,
  seen: Set<Link>
): Link[] {
  const links: Link[] = [];
  let net = from;
  let link = start;
  while (passes(net)) {
    const next = at.get(net)?.find((other) => other !== link);
    if (!next || seen.has(next)) break;
    seen.add(next);
    links.push(next);
    net = next.a === net ? next.b : next.a;
    link = next;
  }
  return links;
}

/** Nets with an alternating source on them. */
function netsThatFeed(study: Study): ReadonlySet<string> {
  const nets = new Set<string>();
  for (const { values, from, to } of study.elements) {
    if (values.kind === 'source' && values.current === 'ac') nets.add(from.id).add(to.id);
  }
  return nets;
}
