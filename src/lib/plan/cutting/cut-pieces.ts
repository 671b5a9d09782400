// Pieces out of lengths of stock that differ: a first cutting, then again and again some of it taken
// apart and cut anew where that is no worse. Chance comes in as an argument, so a run can be had again.
import { fillStock, hairMm } from './fill-stock.ts';
import type { Cutting, StockCut, StockLength, WantedPiece } from './types.ts';

export interface CutProgress {
  readonly round: number;
  readonly rounds: number;
  /** Lengths of stock that are cut into by now. */
  readonly used: number;
}

export interface CutOptions {
  /** A number from 0 to below 1, each time another. */
  readonly chance: () => number;
  /** How often it is taken apart and cut anew. */
  readonly rounds?: number;
  /** Less than this left of an offcut is scrap, mm. */
  readonly usefulMm?: number;
  /** No cutting can use fewer lengths: reached, it stops. */
  readonly atLeast?: number;
  /** Called now and then; false stops, and the best so far is the answer. */
  readonly onProgress?: (progress: CutProgress) => boolean;
}

/** Common practice, no source: a hand's breadth and the strips. */
export const usefulMm = 150;

/** An offcut is worth using up when it loses less than this share of what is cut from it. */
const offcutWorth = 0.1;
const looksAtOne = 3000;
const progressEvery = 50;
export const usualRounds = 400;

interface Open {
  readonly stock: StockLength;
  readonly pieces: readonly WantedPiece[];
  readonly usedMm: number;
}

/** What a cutting in steps takes: false stops it, and the best so far is the answer. */
export type CutSteps<Result> = Generator<CutProgress, Result, boolean | undefined>;

/** All steps at once.
 *  @param onProgress called now and then; false stops */
export function runSteps<Result>(
  steps: CutSteps<Result>,
  onProgress?: (progress: CutProgress) => boolean
): Result {
  let step = steps.next();
  for (let at = 0; step.done !== true; at++) {
    const goesOn = at % progressEvery === 0 ? (onProgress?.(step.value) ?? true) : true;
    step = steps.next(goesOn);
  }
  return step.value;
}

/** Cuts pieces with least waste and fewest offcuts: first as much as can be placed, then the least cost
 *  of stock, then as few and as long remains as may be. */
export const cutPieces = (
  wanted: readonly WantedPiece[],
  stock: readonly StockLength[],
  options: CutOptions
): Cutting => runSteps(cutPiecesInSteps(wanted, stock, options), options.onProgress);

/** As `cutPieces`, a round at each step, so that whoever drives it can draw or stop in between. */
export function* cutPiecesInSteps(
  wanted: readonly WantedPiece[],
  stock: readonly StockLength[],
  options: Omit<CutOptions, 'onProgress'>
): CutSteps<Cutting> {
  const { chance, rounds = usualRounds, atLeast = 0 } = options;
  const useful = options.usefulMm ?? usefulMm;
  const sorted = [...wanted].sort((a, b) => b.mm - a.mm);
  let best = fillAll(sorted, stock, useful, null);
  for (let round = 0; round < rounds && best.open.length > atLeast; round++) {
    if ((yield { round, rounds, used: best.open.length }) === false) break;
    const next = cutAnew(best, stock, useful, chance);
    if (isNoWorse(next, best, useful)) best = next;
  }
  const order = new Map(stock.map((one, at) => [one, at]));
  const cuts = best.open
    .map(({ stock: from, pieces, usedMm }): StockCut => ({
      stock: from,
      pieces: [...pieces].sort((a, b) => b.mm - a.mm),
      leftMm: Math.max(0, roundHair(from.lengthMm - usedMm))
    }))
    .sort((a, b) => (order.get(a.stock) ?? 0) - (order.get(b.stock) ?? 0));
  return { cuts, unplaced: best.unplaced };
}

const roundHair = (mm: number): number => Math.round(mm * 1e4) / 1e4;

interface Attempt {
  readonly open: readonly Open[];
  readonly unplaced: readonly WantedPiece[];
}

/** Stock is filled one length after the other: each time the one that it serves best.
 *  @param chance null takes always the best; otherwise pieces are left out now and then */
function fillAll(
  sorted: readonly WantedPiece[],
  stock: readonly StockLength[],
  useful: number,
  chance: (() => number) | null
): Attempt {
  let pieces = sorted;
  let free = [...stock];
  const open: Open[] = [];
  const unplaced: WantedPiece[] = [];
  while (pieces.length > 0) {
    const [longest] = pieces as readonly [WantedPiece, ...WantedPiece[]];
    const choice = chooseStock(pieces, longest, free, useful, chance);
    if (!choice) {
      unplaced.push(longest);
      pieces = pieces.slice(1);
      continue;
    }
    open.push(choice);
    free = free.filter((one) => one !== choice.stock);
    const taken = new Set(choice.pieces);
    pieces = pieces.filter((piece) => !taken.has(piece));
  }
  return { open, unplaced };
}

/** Of equal lengths one is looked at: the rest would come out the same. */
function chooseStock(
  pieces: readonly WantedPiece[],
  longest: WantedPiece,
  free: readonly StockLength[],
  useful: number,
  chance: (() => number) | null
): Open | null {
  const seen = new Set<string>();
  let best: Open | null = null;
  let bestCost = Infinity;
  for (const stock of free) {
    const key = `${stock.kind} ${stock.lengthMm}`;
    if (stock.lengthMm + hairMm < longest.mm || seen.has(key)) continue;
    seen.add(key);
    const offered =
      chance === null ? pieces : pieces.filter((piece) => piece === longest || chance() < 0.8);
    const chosen = fillStock(stock.lengthMm, offered, offered.indexOf(longest), looksAtOne);
    const own = chosen.flatMap((at) => offered[at] ?? []);
    const usedMm = own.reduce((sum, { mm }) => sum + mm, 0);
    const candidate = { stock, pieces: own, usedMm };
    const cost = costOf(candidate, useful) / usedMm;
    if (cost < bestCost - 1e-12) [best, bestCost] = [candidate, cost];
  }
  return best;
}

/** What a length costs once it is cut into, mm. */
function costOf({ stock, usedMm }: Open, useful: number): number {
  const left = stock.lengthMm - usedMm;
  if (stock.kind === 'new length') return stock.lengthMm;
  if (stock.kind === 'spool') return usedMm;
  const scrap = left < useful ? left : 0;
  return usedMm * (1 - offcutWorth) + scrap;
}

/** Some of the lengths are taken apart, the emptiest among them more often, and cut anew. */
function cutAnew(
  best: Attempt,
  stock: readonly StockLength[],
  useful: number,
  chance: () => number
): Attempt {
  const count = Math.min(best.open.length, 2 + Math.floor(chance() * 7));
  const ranked = [...best.open].sort((a, b) => leftOf(b) - leftOf(a));
  const chosen = new Set<Open>();
  while (chosen.size < count) {
    const skewed = Math.floor(chance() ** (1 + chance() * 2) * ranked.length);
    const one = ranked[skewed];
    if (one) chosen.add(one);
  }
  const kept = best.open.filter((one) => !chosen.has(one));
  const keptStock = new Set(kept.map((one) => one.stock));
  const free = stock.filter((one) => !keptStock.has(one));
  const pieces = [...[...chosen].flatMap((one) => one.pieces), ...best.unplaced].sort(
    (a, b) => b.mm - a.mm
  );
  const next = fillAll(pieces, free, useful, chance);
  return { open: [...kept, ...next.open], unplaced: next.unplaced };
}

const leftOf = ({ stock, usedMm }: Open): number =>
  stock.kind === 'spool' ? 0 : stock.lengthMm - usedMm;

function isNoWorse(next: Attempt, best: Attempt, useful: number): boolean {
  const [a, b] = [scoreOf(next, useful), scoreOf(best, useful)];
  for (const [at, value] of a.entries()) {
    const other = b[at] ?? 0;
    if (value < other - hairMm) return true;
    if (value > other + hairMm) return false;
  }
  return true;
}

/** Smaller is better: what is not placed, the cost, and remains that are scattered. */
function scoreOf({ open, unplaced }: Attempt, useful: number): readonly number[] {
  let [cost, gathered] = [0, 0];
  for (const one of open) {
    cost += costOf(one, useful);
    gathered += leftOf(one) ** 2;
  }
  return [unplaced.reduce((sum, { mm }) => sum + mm, 0), cost, -gathered];
}
