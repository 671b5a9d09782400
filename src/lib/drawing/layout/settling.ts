// Things that slide up and down between their neighbours until the ties between them are short.
// A thing that is held up by a neighbour takes the neighbour along if that is worth it, so that
// whole heaps move and not only what happens to lie free.

/** The lower group moves at least as far down as the upper one plus this. */
export interface Rule {
  readonly upper: number;
  readonly lower: number;
  readonly apart: number;
}

/** A tie that wants its two ends level; to the border where there is no other group. */
export interface Pull {
  readonly group: number;
  readonly other: number | null;
  /** How far the other end lies below this one before anything moves. */
  readonly apart: number;
  readonly border: 'top' | 'bottom' | undefined;
}

export interface System {
  /** Upper and lower edge of each group before anything moves, mm. */
  readonly extents: ReadonlyMap<number, { readonly y1: number; readonly y2: number }>;
  readonly rules: readonly Rule[];
  readonly pulls: readonly Pull[];
}

export interface Bounds {
  /** Room kept free inside the upper and lower border, mm. */
  readonly top: number;
  readonly bottom: number;
}

const tight = 1e-6;
const mostRounds = 60;

const gather = <T>(list: readonly T[], keyOf: (item: T) => number): Map<number, T[]> => {
  const map = new Map<number, T[]>();
  for (const item of list) {
    const known = map.get(keyOf(item));
    if (known) known.push(item);
    else map.set(keyOf(item), [item]);
  }
  return map;
};

export class Settling {
  /** How far each group has moved down. */
  readonly moves = new Map<number, number>();
  private readonly system: System;
  private readonly above: ReadonlyMap<number, readonly Rule[]>;
  private readonly below: ReadonlyMap<number, readonly Rule[]>;
  private readonly pulls: ReadonlyMap<number, readonly Pull[]>;
  private readonly bounds: Bounds;
  private readonly height: number;
  private floor: number;

  /** `height` is the height before anything moves: the floor never comes to lie below it. */
  constructor(system: System, bounds: Bounds, height: number) {
    this.system = system;
    this.bounds = bounds;
    this.height = height;
    this.floor = height - bounds.bottom;
    for (const group of system.extents.keys()) this.moves.set(group, 0);
    this.above = gather(system.rules, ({ lower }) => lower);
    this.below = gather(system.rules, ({ upper }) => upper);
    this.pulls = gather(system.pulls, ({ group }) => group);
  }

  private moveOf(group: number): number {
    return this.moves.get(group) ?? 0;
  }

  private topOf(group: number): number {
    return (this.system.extents.get(group)?.y1 ?? 0) + this.moveOf(group);
  }

  private footOf(group: number): number {
    return (this.system.extents.get(group)?.y2 ?? 0) + this.moveOf(group);
  }

  private byHeight(): number[] {
    return [...this.moves.keys()].sort((a, b) => this.topOf(a) - this.topOf(b));
  }

  /** How far up a group may go for the border's sake. */
  private ceiling(group: number): number {
    const start = this.system.extents.get(group)?.y1 ?? 0;
    return Math.min(this.bounds.top, start) - start;
  }

  /** Everything up as far as it goes: the least height that this order allows. */
  pushUp(): void {
    for (let round = 0; round < mostRounds; round++) {
      let moved = 0;
      for (const group of this.byHeight()) {
        let bound = this.ceiling(group);
        for (const { upper, apart } of this.above.get(group) ?? []) {
          bound = Math.max(bound, this.moveOf(upper) + apart);
        }
        const now = this.moveOf(group);
        if (bound >= now) continue;
        moved += now - bound;
        this.moves.set(group, bound);
      }
      if (moved < 0.01) break;
    }
    const deepest = Math.max(
      this.bounds.top,
      ...[...this.moves.keys()].map((group) => this.footOf(group))
    );
    this.floor = deepest;
  }

  /** Heaps move, up and down in turn, as long as their ties get shorter. */
  shorten(): void {
    for (let round = 0; round < mostRounds; round++) {
      let gain = 0;
      const order = this.byHeight();
      for (const group of round % 2 === 0 ? order.reverse() : order) {
        gain += this.slide(group, 1) + this.slide(group, -1);
      }
      if (gain < 0.5) break;
    }
  }

  /** The group with everything that lies against it that way; null where the border is in the way. */
  private heap(group: number, way: 1 | -1): Set<number> | null {
    const heap = new Set([group]);
    for (const one of heap) {
      if (way === 1 && this.footOf(one) >= this.floor - tight) return null;
      if (way === -1 && this.moveOf(one) <= this.ceiling(one) + tight) return null;
      const rules = way === 1 ? this.below.get(one) : this.above.get(one);
      for (const { upper, lower, apart } of rules ?? []) {
        if (this.moveOf(lower) - this.moveOf(upper) - apart <= tight)
          heap.add(way === 1 ? lower : upper);
      }
    }
    return heap;
  }

  /** How far the far end of a pull lies below its near end now. */
  private reach({ group, other, apart, border }: Pull): number {
    if (other !== null) return apart + this.moveOf(other) - this.moveOf(group);
    const shift = border === 'bottom' ? this.floor + this.bounds.bottom - this.height : 0;
    return apart + shift - this.moveOf(group);
  }

  /** Moves a heap as far as every step still pays; returns how much shorter its ties became. */
  private slide(group: number, way: 1 | -1): number {
    let total = 0;
    for (let step = 0; step < 20; step++) {
      const heap = this.heap(group, way);
      if (!heap) break;
      let slope = 0;
      let longest = Infinity;
      for (const one of heap) {
        longest = Math.min(
          longest,
          way === 1 ? this.floor - this.footOf(one) : this.moveOf(one) - this.ceiling(one)
        );
        for (const pull of this.pulls.get(one) ?? []) {
          if (pull.other !== null && heap.has(pull.other)) continue;
          const ahead = this.reach(pull) * way;
          if (ahead > tight) {
            slope += 1;
            longest = Math.min(longest, ahead);
          } else slope -= 1;
        }
        const rules = way === 1 ? this.below.get(one) : this.above.get(one);
        for (const { upper, lower, apart } of rules ?? []) {
          if (heap.has(upper) && heap.has(lower)) continue;
          longest = Math.min(longest, this.moveOf(lower) - this.moveOf(upper) - apart);
        }
      }
      if (slope <= 0 || longest === Infinity || longest < tight) break;
      for (const one of heap) this.moves.set(one, this.moveOf(one) + way * longest);
      total += slope * longest;
    }
    return total;
  }
}
