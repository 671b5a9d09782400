// Which of a row of numbered points belong together: a union-find over plain integers.

export class DisjointSets {
  private readonly parent: Int32Array;

  constructor(size: number, from?: DisjointSets) {
    this.parent = from ? from.parent.slice() : new Int32Array(size);
    if (!from) for (let n = 0; n < size; n++) this.parent[n] = n;
  }

  /** A copy that can grow apart from this one. */
  copy(): DisjointSets {
    return new DisjointSets(this.parent.length, this);
  }

  /** The point that stands for the whole set; it changes as sets are joined. */
  rootOf(point: number): number {
    let root = point;
    for (;;) {
      const above = this.parent[root] ?? root;
      if (above === root) break;
      // Each look-up halves the path for the next one.
      const higher = this.parent[above] ?? above;
      this.parent[root] = higher;
      root = higher;
    }
    return root;
  }

  join(a: number, b: number): void {
    const rootA = this.rootOf(a);
    const rootB = this.rootOf(b);
    // The smaller number stands for both, so that the order of joining does not matter.
    if (rootA < rootB) this.parent[rootB] = rootA;
    else this.parent[rootA] = rootB;
  }
}
