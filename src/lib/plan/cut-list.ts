// The cut list: which piece of the shelf each wire is cut from, and what is left of it. Each type of wire
// is cut by itself, out of all its spools and offcuts.
import type { Id, Stock } from '#document/index.ts';
import { cutPieces, type CutOptions } from './cutting/cut-pieces.ts';
import { usefulMm } from './cutting/cut-pieces.ts';
import type { StockLength } from './cutting/types.ts';
import type { Plan, StockType } from './types.ts';

export interface CutFrom {
  readonly stock: Stock;
  readonly type: StockType;
  /** In the order that they are cut: longest first. */
  readonly pieces: readonly { readonly wire: Id; readonly mm: number }[];
  readonly leftMm: number;
  /** What becomes of what is left. */
  readonly left: 'stays on the spool' | 'an offcut' | 'scrap' | 'nothing';
}

export interface CutList {
  readonly cuts: readonly CutFrom[];
  /** Wires that the shelf is too short for after all. */
  readonly unplaced: readonly { readonly wire: Id; readonly mm: number }[];
  /** All that is cut, mm, and what of it is thrown away. */
  readonly cutMm: number;
  readonly scrapMm: number;
  /** Wires to be cut whose length nobody knows. */
  readonly lengthUnknown: readonly Id[];
}

export function buildCutList(plan: Plan, options: CutOptions): CutList {
  const useful = options.usefulMm ?? usefulMm;
  const cuts: CutFrom[] = [];
  const unplaced: { wire: Id; mm: number }[] = [];
  for (const type of plan.stockTypes) {
    const own = plan.wires.filter(({ stockType }) => stockType === type);
    for (const { from, pieces, leftMm } of cutType(type, own, options, unplaced)) {
      cuts.push({ stock: from, type, pieces, leftMm, left: whatIsLeft(from, leftMm, useful) });
    }
  }
  const scrap = cuts.filter(({ left }) => left === 'scrap');
  return {
    cuts,
    unplaced,
    cutMm: sumOf(cuts.flatMap(({ pieces }) => pieces.map(({ mm }) => mm))),
    scrapMm: sumOf(scrap.map(({ leftMm }) => leftMm)),
    lengthUnknown: plan.wires
      .filter(({ stockType, cutMm }) => stockType !== null && cutMm === null)
      .map(({ wire }) => wire)
  };
}

interface RawCut {
  readonly from: Stock;
  readonly pieces: readonly { readonly wire: Id; readonly mm: number }[];
  readonly leftMm: number;
}

/** What a person cuts from a certain piece is cut there first; the rest goes where it wastes least. */
function cutType(
  type: StockType,
  plans: Plan['wires'],
  options: CutOptions,
  unplaced: { wire: Id; mm: number }[]
): readonly RawCut[] {
  const wanted = plans.flatMap(({ wire, cutMm, stock }) =>
    cutMm === null ? [] : [{ wire, mm: cutMm, stock }]
  );
  const chosen = new Map<Id, { wire: Id; mm: number }[]>();
  const free: { id: Id; mm: number }[] = [];
  for (const { wire, mm, stock } of wanted) {
    if (stock === null) free.push({ id: wire, mm });
    else chosen.set(stock, [...(chosen.get(stock) ?? []), { wire, mm }]);
  }
  const lengths = type.pieces.map((piece): StockLength => {
    const taken = sumOf((chosen.get(piece.id) ?? []).map(({ mm }) => mm));
    return {
      id: piece.id,
      lengthMm: Math.max(0, piece.lengthMm - taken),
      kind: piece.kind === 'spool' ? 'spool' : 'offcut'
    };
  });
  const cutting = cutPieces(free, lengths, options);
  unplaced.push(...cutting.unplaced.map(({ id, mm }) => ({ wire: id, mm })));
  return type.pieces.flatMap((from) => {
    const cut = cutting.cuts.find(({ stock }) => stock.id === from.id);
    const pieces = [
      ...(chosen.get(from.id) ?? []),
      ...(cut?.pieces ?? []).map(({ id, mm }) => ({ wire: id, mm }))
    ];
    if (pieces.length === 0) return [];
    const leftMm = Math.max(0, from.lengthMm - sumOf(pieces.map(({ mm }) => mm)));
    return [{ from, pieces, leftMm }];
  });
}

function whatIsLeft({ kind }: Stock, leftMm: number, useful: number): CutFrom['left'] {
  if (leftMm < 0.05) return 'nothing';
  if (kind === 'spool') return 'stays on the spool';
  return leftMm < useful ? 'scrap' : 'an offcut';
}

const sumOf = (lengths: readonly number[]): number => lengths.reduce((sum, mm) => sum + mm, 0);
