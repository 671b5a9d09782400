// By which side of its block a line leaves for the rest of the drawing.
import type { Id } from '#document/index.ts';
import type { Block } from './blocks.ts';
import type { Link } from './links.ts';
import type { Plan } from './plan.ts';
import type { Side } from './sides.ts';

/** The blocks that hold a part, from the innermost out to the sheet. */
export const chainOf = (plan: Plan, part: Id): Block[] => {
  const chain: Block[] = [];
  let block = plan.homes.get(part);
  while (block) {
    chain.push(block);
    block = plan.parents.get(block.id);
  }
  return chain;
};

const sideBetween = (holder: Block, own: Block, other: Block): Side => {
  const isFirst = holder.blocks.indexOf(own) < holder.blocks.indexOf(other);
  if (holder.flow === 'down') return isFirst ? 'south' : 'north';
  return isFirst ? 'east' : 'west';
};

export interface Passage {
  /** The innermost block that holds both ends. */
  readonly holder: Block;
  /** Blocks that the line leaves on its way there, innermost first, and by which side. */
  readonly from: readonly { readonly block: Block; readonly side: Side }[];
  readonly to: readonly { readonly block: Block; readonly side: Side }[];
}

/** How a line passes from block to block. */
export const passageOf = (plan: Plan, link: Link): Passage => {
  const a = chainOf(plan, link.from.part);
  const b = chainOf(plan, link.to.part);
  const holder = a.find((block) => b.includes(block)) ?? plan.sheet;
  const outFrom = a.slice(0, a.indexOf(holder));
  const outTo = b.slice(0, b.indexOf(holder));
  const [lastFrom, lastTo] = [outFrom.at(-1), outTo.at(-1)];
  const sideFrom = lastFrom && lastTo ? sideBetween(holder, lastFrom, lastTo) : 'east';
  const sideTo = lastFrom && lastTo ? sideBetween(holder, lastTo, lastFrom) : 'west';
  return {
    holder,
    from: outFrom.map((block) => ({ block, side: sideFrom })),
    to: outTo.map((block) => ({ block, side: sideTo }))
  };
};
