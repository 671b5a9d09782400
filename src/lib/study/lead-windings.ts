// Windings that nobody drew, by the colours of a transformer's leads: in the trade's code the leads of one
// winding have one colour, and its tap has a tracer to it. Enough to know that they stand at one dc.
import type { Part } from '#document/index.ts';
import { parseColour, type ColourName } from '#handbook/index.ts';
import type { NetGroup } from './group-nets.ts';
import { listAt, type Lists } from './lists.ts';
import type { Points } from './points.ts';

export interface LeadWinding {
  readonly part: Part;
  readonly colour: ColourName;
  /** Nets of its leads, two or more, none twice. */
  readonly nets: readonly NetGroup[];
}

/** "green", "green 2" and "green/yellow" are leads of the green winding. A transformer of which somebody drew
 *  windings is left to what was drawn. */
export function windingsByColour(
  points: Points,
  groupAt: readonly NetGroup[]
): readonly LeadWinding[] {
  const { parts, entriesOf } = points.source.parts;
  const windings: LeadWinding[] = [];
  for (const part of parts) {
    if (part.kind !== 'transformer' || Object.keys(part.elements ?? {}).length > 0) continue;
    const leads: Lists<ColourName, NetGroup> = new Map();
    for (const { number, terminal } of entriesOf.get(part) ?? []) {
      const lead = parseColour(terminal.name.replace(/[\s-]*\d+$/, ''));
      const net = groupAt[points.rootOf[number] ?? number];
      if (!lead || !net) continue;
      const nets = listAt(leads, lead.colour);
      if (!nets.includes(net)) nets.push(net);
    }
    for (const [colour, nets] of leads) {
      if (nets.length > 1) windings.push({ part, colour, nets });
    }
  }
  return windings;
}
