// Blocks that were laid out before: an undo, or an edit in one unit, does not lay the others out again.
import type { BlockCache } from '#drawing/index.ts';

/** Blocks that are remembered; with more than this the memory starts afresh. */
const mostBlocks = 400;

export class LayoutMemory {
  #blocks: BlockCache = new Map();

  /** The blocks known so far, to be read and added to by one layout. */
  get blocks(): BlockCache {
    if (this.#blocks.size > mostBlocks) this.forget();
    return this.#blocks;
  }

  /** Another document has nothing in common with the last. */
  forget(): void {
    this.#blocks = new Map();
  }
}
