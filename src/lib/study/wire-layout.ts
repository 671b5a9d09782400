// Where the wires run, as plain numbers: all that decides which points they join. As long as no wire
// was moved, added or taken away it is the same object, whatever else was written down about them.
import type { Id } from '#document/index.ts';
import type { WiresIndex } from './index-wires.ts';
import { joinsItsEnds } from './points.ts';
import { sameItems } from './same.ts';

export interface WireLayout {
  readonly ids: readonly Id[];
  /** Three a wire: the number of the terminal that it starts at and that it ends at (-1: not
   *  known), and 1 where it makes the two one net. */
  readonly numbers: Int32Array;
}

export function layoutWires({ slots }: WiresIndex, before?: WireLayout): WireLayout {
  const ids = slots.map(({ wire }) => wire.id);
  const numbers = new Int32Array(slots.length * 3);
  slots.forEach(({ wire, from, to }, n) => {
    numbers[3 * n] = from?.number ?? -1;
    numbers[3 * n + 1] = to?.number ?? -1;
    numbers[3 * n + 2] = joinsItsEnds(wire) ? 1 : 0;
  });
  const isSame =
    before !== undefined &&
    sameItems(before.ids, ids) &&
    before.numbers.every((number, n) => number === numbers[n]);
  return isSame ? before : { ids, numbers };
}
