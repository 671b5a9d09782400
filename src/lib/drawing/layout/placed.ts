// A block that has been laid out: its nodes, lines and exits in millimetres from its own corner.
import type { Side, Spot } from '../presentation/sides.ts';

export interface PlacedNode extends Spot {
  readonly id: string;
  readonly width: number;
  readonly height: number;
}

export interface PlacedBlock {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly nodes: readonly PlacedNode[];
  /** By line, from its first end (or border) to its second. */
  readonly routes: ReadonlyMap<string, readonly Spot[]>;
  /** Where lines meet the border. */
  readonly exits: ReadonlyMap<string, Spot & { readonly side: Side }>;
}
