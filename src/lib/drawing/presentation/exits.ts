// By which side of its unit a line leaves for another one.
import type { Link } from './links.ts';
import type { Plan } from './plan.ts';
import type { Side } from './sides.ts';

/** Towards the other unit, before there is a layout; null where the line stays in its unit. */
export const sideOut = ({ homes, sheet }: Plan, link: Link, end: 'from' | 'to'): Side | null => {
  const own = homes.get(link[end].part);
  const other = homes.get(link[end === 'from' ? 'to' : 'from'].part);
  if (!own || !other || own === other) return null;
  return sheet.blocks.indexOf(own) < sheet.blocks.indexOf(other) ? 'east' : 'west';
};
