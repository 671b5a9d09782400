// A picture tube lies on the sheet as if seen from its side, its socket turned to the reader: neck
// from the socket, bulb with the anode button where it was measured, face.
import type { Spot } from '../presentation/sides.ts';
import { splitPins } from './terminal-offsets.ts';
import type { PartPen } from './part-pen.ts';
import type { PlacedPart } from './placed-part.ts';

const neckHalfMm = 14;

/** The bulb behind the socket; nothing where no anode says which way it points. */
export function drawPictureTube(pen: PartPen, { terminals, offsets }: PlacedPart): void {
  const anode = splitPins(terminals)
    .others.map(({ id }) => offsets.get(id))
    .find((spot) => spot && Math.hypot(spot.x, spot.y) > 3 * neckHalfMm);
  if (!anode) return;
  const level = Math.abs(anode.x) >= Math.abs(anode.y);
  const along = level ? anode.x : anode.y;
  const way = Math.sign(along);
  const long = Math.abs(along);
  const button = Math.max(Math.abs(level ? anode.y : anode.x), neckHalfMm + 8);
  const cone = long - (button - neckHalfMm) * 0.62;
  const slope = (button - neckHalfMm) / Math.max(1, long - cone);
  const rim = long + 14;
  const half = neckHalfMm + (rim - cone) * slope;
  const face = rim + 18;
  const at = (out: number, across: number): Spot =>
    level ? { x: way * out, y: across } : { x: across, y: way * out };
  const side = (sign: 1 | -1): Spot[] => [
    at(0, sign * neckHalfMm),
    at(cone - 6, sign * neckHalfMm),
    at(cone + 4, sign * (neckHalfMm + 5 * slope)),
    at(rim, sign * half),
    at(rim + 6, sign * half),
    at(face, sign * half * 0.62),
    at(face + 3, sign * half * 0.2)
  ];
  pen.line('part.body', [...side(-1), ...side(1).toReversed()], { closed: true });
  pen.line('part.fine', [at(rim, -half), at(rim, half)]);
}
