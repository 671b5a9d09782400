// A laid-out diagram in millimetres: where every part stands, how every line runs, which units there are.
import type { Id } from '#document/index.ts';
import type { Box, Figure } from '../figures/figure.ts';
import type { Block } from '../presentation/blocks.ts';
import type { Link } from '../presentation/links.ts';
import type { Spot } from '../presentation/sides.ts';

export interface DiagramPart {
  readonly id: Id;
  readonly box: Box;
  readonly figure: Figure;
}

export interface DiagramLine {
  readonly link: Link;
  /** From border to border of the parts at its ends, upright and level pieces only. */
  readonly route: readonly Spot[];
  /** Inside the part at either end, from the terminal to the border, the border's spot last. */
  readonly fromPath: readonly Spot[];
  readonly toPath: readonly Spot[];
}

export interface DiagramFrame {
  readonly block: Block;
  readonly box: Box;
  /** The upper left corner as it was laid out: places by hand count from there. */
  readonly corner: Spot;
}

/** The laid-out diagram in millimetres, and the box that holds all of it. */
export interface Geometry extends Box {
  readonly frames: readonly DiagramFrame[];
  readonly parts: readonly DiagramPart[];
  readonly lines: readonly DiagramLine[];
}

/** Corners only: spots on a straight line and repeated spots are left out. */
export const cleanRoute = (route: readonly Spot[]): Spot[] => {
  const out: Spot[] = [];
  const near = (a: number, b: number) => Math.abs(a - b) < 1e-3;
  for (const point of route) {
    const [last, before] = [out.at(-1), out.at(-2)];
    if (last && near(last.x, point.x) && near(last.y, point.y)) continue;
    const isStraight =
      last &&
      before &&
      ((near(before.x, last.x) && near(last.x, point.x)) ||
        (near(before.y, last.y) && near(last.y, point.y)));
    if (isStraight) out.pop();
    out.push(point);
  }
  return out;
};
