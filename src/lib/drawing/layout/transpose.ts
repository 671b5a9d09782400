// A block mirrored at its diagonal, so that what is written for up and down serves for left and right.
import type { Side, Spot } from '../presentation/sides.ts';
import type { PlacedBlock } from './placed.ts';

const turned: Readonly<Record<Side, Side>> = {
  north: 'west',
  west: 'north',
  south: 'east',
  east: 'south'
};

const swap = ({ x, y }: Spot): Spot => ({ x: y, y: x });

/** The block with x and y exchanged; twice gives it back. */
export const transposeBlock = (block: PlacedBlock): PlacedBlock => ({
  id: block.id,
  width: block.height,
  height: block.width,
  nodes: block.nodes.map(({ id, x, y, width, height }) => ({
    id,
    x: y,
    y: x,
    width: height,
    height: width
  })),
  routes: new Map([...block.routes].map(([id, route]) => [id, route.map(swap)])),
  exits: new Map(
    [...block.exits].map(([id, exit]) => [id, { ...swap(exit), side: turned[exit.side] }])
  )
});
