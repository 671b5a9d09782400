// Where the wires run, as plain numbers: all that decides which points they join. As long as no wire
// was moved, added or taken away it is the same object, whatever else was written down about them.
import type { Id } from '#document/index.ts';
import type { WireSlot, WiresIndex } from './index-wires.ts';
import { joinsItsEnds } from './points.ts';
import { keepItems } from './same.ts';

export interface WireLayout {
  readonly ids: readonly Id[];
  /** Three a wire: the number of the terminal that it starts at and that it ends at (-1: not
   *  known), and 1 where it makes the two one net. */
  readonly numbers: Int32Array;
}

/** @param touched wires that are not what they were before */
export function layoutWires(
  { wires, slots, slotById }: WiresIndex,
  touched: ReadonlySet<Id>,
  before?: { readonly wires: WiresIndex; readonly layout: WireLayout }
): WireLayout {
  if (before && before.wires.wires.length === wires.length) {
    const isSame = [...touched].every((id) => {
      const [was, now] = [before.wires.slotById.get(id), slotById.get(id)];
      return was !== undefined && now !== undefined && runsAlike(was, now);
    });
    if (isSame) return before.layout;
  }
  const ids = keepItems(
    before?.layout.ids,
    slots.map(({ wire }) => wire.id)
  );
  const numbers = new Int32Array(slots.length * 3);
  slots.forEach(({ wire, from, to }, n) => {
    numbers[3 * n] = from?.number ?? -1;
    numbers[3 * n + 1] = to?.number ?? -1;
    numbers[3 * n + 2] = joinsItsEnds(wire) ? 1 : 0;
  });
  const isSame =
    before?.layout.ids === ids && before.layout.numbers.every((number, n) => number === numbers[n]);
  return isSame ? before.layout : { ids, numbers };
}

const runsAlike = (a: WireSlot, b: WireSlot): boolean =>
  a.from?.number === b.from?.number &&
  a.to?.number === b.to?.number &&
  a.wire.order === b.wire.order &&
  joinsItsEnds(a.wire) === joinsItsEnds(b.wire);
