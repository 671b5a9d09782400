// The line side: what hangs on the power line before a winding, a rectifier or a resistor comes between.
// Surges arrive there first, and a switch or a fuse that is open takes nothing away from that.
import type { PlacedElement } from './circuit-elements.ts';
import type { NetGroup } from './group-nets.ts';
import { listAt, type Lists } from './lists.ts';

/** No winding that feeds heaters gives as much; the line of no country gives less. */
export const leastLineV = 80;

/** True for an alternating source that stands for the power line: that of a plug or an interlock, or one
 *  on nets that are called the line. */
export function isLineSource(
  { part, values, from, to }: PlacedElement,
  isCalledLine: (net: NetGroup) => boolean
): boolean {
  if (values.kind !== 'source' || values.current !== 'ac') return false;
  if (Math.abs(values.volts) < leastLineV) return false;
  return /^(plug|jack)$/.test(part.kind) || isCalledLine(from) || isCalledLine(to);
}

/** Nets on the line side: those called so, those of the line's source, and what fuses and switches, open
 *  or closed, connect to them. The chassis is none, also where it hangs on the line. */
export function lineSideNets(
  groups: readonly NetGroup[],
  elements: readonly PlacedElement[],
  isCalledLine: (net: NetGroup) => boolean
): ReadonlySet<NetGroup> {
  const onLine = new Set<NetGroup>();
  const queue: NetGroup[] = [];
  const reach = (net: NetGroup) => {
    if (net.isChassis || onLine.has(net)) return;
    onLine.add(net);
    queue.push(net);
  };
  for (const group of groups) if (isCalledLine(group)) reach(group);
  const links: Lists<NetGroup, NetGroup> = new Map();
  for (const element of elements) {
    const { values, from, to } = element;
    if (isLineSource(element, isCalledLine)) {
      reach(from);
      reach(to);
    }
    if (values.kind !== 'link') continue;
    listAt(links, from).push(to);
    listAt(links, to).push(from);
  }
  // The queue grows while it is walked.
  for (const net of queue) for (const next of links.get(net) ?? []) reach(next);
  return onLine;
}
