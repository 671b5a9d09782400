// What a cutting is about: pieces wanted, stock at hand, and what comes out of each piece of stock.

/** `spool`: what is left of it stays on it. `offcut`: what is left of it is an offcut again, or scrap.
 *  `new length`: bought whole, so that the fewer there are the better. */
export type StockKind = 'spool' | 'offcut' | 'new length';

export interface StockLength {
  readonly id: string;
  readonly lengthMm: number;
  readonly kind: StockKind;
}

export interface WantedPiece {
  readonly id: string;
  readonly mm: number;
}

export interface StockCut {
  readonly stock: StockLength;
  /** Longest first. */
  readonly pieces: readonly WantedPiece[];
  readonly leftMm: number;
}

export interface Cutting {
  /** Only stock that something is cut from, in the order it was given. */
  readonly cuts: readonly StockCut[];
  /** For which there was no stock long enough, or not enough of it. */
  readonly unplaced: readonly WantedPiece[];
}
