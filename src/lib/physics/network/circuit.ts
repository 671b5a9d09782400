// A network of resistances, sources and loads as the solver takes it, and what it says of it.
// Nodes are names. Direct current and one alternating current of one phase are solved apart.

/** One branch from a node to another. A positive current flows from `from` to `to`. */
export type Branch =
  | {
      readonly kind: 'resistance';
      readonly id: string;
      readonly from: string;
      readonly to: string;
      readonly ohms: number;
    }
  | {
      /** `to` stands `volts` above `from`, less what is lost in `ohms` (0: an ideal source). */
      readonly kind: 'source';
      readonly id: string;
      readonly from: string;
      readonly to: string;
      readonly volts: number;
      readonly ohms: number;
    }
  | {
      /** Draws `amps` from `from` and returns them at `to`, whatever the voltage. */
      readonly kind: 'load';
      readonly id: string;
      readonly from: string;
      readonly to: string;
      readonly amps: number;
    }
  | {
      /** No resistance at all: a closed switch, a good fuse, a wire of unknown length. */
      readonly kind: 'join';
      readonly id: string;
      readonly from: string;
      readonly to: string;
    };

export interface Circuit {
  readonly branches: readonly Branch[];
  /** The nodes that stand at 0 V: the chassis. Those that no branch touches are left out. */
  readonly reference: readonly string[];
}

/** What is wrong with a circuit, with the branches and nodes that make it so. */
export interface NetworkFault {
  /** `shorted`: sources without resistance that contradict each other in one loop.
   *  `starved`: a load with no path for its current.
   *  `floating`: an island with no path to the chassis; its voltages are to one of its own nodes. */
  readonly kind: 'shorted' | 'starved' | 'floating';
  readonly nodes: readonly string[];
  readonly branches: readonly string[];
}

export interface NetworkSolution {
  /** Volts of every node to the chassis; in a floating island to that island's own `origin`.
   *  Null where the circuit does not say. */
  readonly volts: ReadonlyMap<string, number | null>;
  /** Amperes of every branch from its `from` to its `to`. Null where several paths without
   *  resistance share a current in a way that nothing tells. */
  readonly amps: ReadonlyMap<string, number | null>;
  /** By node: the node that its volts are measured to; null for the chassis. */
  readonly origin: ReadonlyMap<string, string | null>;
  readonly faults: readonly NetworkFault[];
}
