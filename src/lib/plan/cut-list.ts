// The cut list: which piece of the shelf each wire is cut from, and what is left of it. Each type of wire
// is cut by itself, out of all its spools and offcuts.
import type { Id, Stock } from '#document/index.ts';
import { lowerBound } from './cutting/bounds.ts';
import {
  cutPiecesInSteps,
  runSteps,
  usefulMm,
  usualRounds,
  type CutOptions,
  type CutSteps
} from './cutting/cut-pieces.ts';
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
  /** No cutting does with fewer pieces of the shelf. */
  readonly atLeast: number;
  /** False where it was stopped: another cutting might do better. */
  readonly isWhole: boolean;
  /** Wires to be cut whose length nobody knows. */
  readonly lengthUnknown: readonly Id[];
}

/** @param options.onProgress called now and then; false stops, and the best so far is the answer */
export const buildCutList = (plan: Plan, options: CutOptions): CutList =>
  runSteps(cutListInSteps(plan, options), options.onProgress);

/** As `buildCutList`, in steps. Once it is stopped, the types that are still to come are cut as they come. */
export function* cutListInSteps(
  plan: Plan,
  options: Omit<CutOptions, 'onProgress'>
): CutSteps<CutList> {
  const useful = options.usefulMm ?? usefulMm;
  const rounds = options.rounds ?? usualRounds;
  const cuts: CutFrom[] = [];
  const unplaced: { wire: Id; mm: number }[] = [];
  const types = plan.stockTypes.filter((type) =>
    plan.wires.some(({ stockType, cutMm }) => stockType === type && cutMm !== null)
  );
  let isStopped = false;
  for (const [at, type] of types.entries()) {
    const own = plan.wires.filter(({ stockType }) => stockType === type);
    const steps = cutType(type, own, { ...options, rounds: isStopped ? 0 : rounds });
    let step = steps.next();
    while (step.done !== true) {
      const { round, used } = step.value;
      const goesOn = yield {
        round: at * rounds + round,
        rounds: types.length * rounds,
        used: used + cuts.length
      };
      isStopped ||= goesOn === false;
      step = steps.next(!isStopped);
    }
    unplaced.push(...step.value.unplaced);
    for (const { from, pieces, leftMm } of step.value.cuts) {
      cuts.push({ stock: from, type, pieces, leftMm, left: whatIsLeft(from, leftMm, useful) });
    }
  }
  const scrap = cuts.filter(({ left }) => left === 'scrap');
  return {
    cuts,
    unplaced,
    cutMm: sumOf(cuts.flatMap(({ pieces }) => pieces.map(({ mm }) => mm))),
    scrapMm: sumOf(scrap.map(({ leftMm }) => leftMm)),
    atLeast: types.reduce((sum, type) => sum + fewestOf(type, cuts), 0),
    isWhole: !isStopped,
    lengthUnknown: plan.wires
      .filter(({ stockType, cutMm }) => stockType !== null && cutMm === null)
      .map(({ wire }) => wire)
  };
}

/** How few pieces of the shelf could do for a type, if all were as long as its longest. */
function fewestOf(type: StockType, cuts: readonly CutFrom[]): number {
  const pieces = cuts
    .filter((cut) => cut.type === type)
    .flatMap((cut) => cut.pieces.map(({ wire, mm }) => ({ id: wire, mm })));
  return lowerBound(pieces, Math.max(...type.pieces.map(({ lengthMm }) => lengthMm)));
}

interface RawCut {
  readonly from: Stock;
  readonly pieces: readonly { readonly wire: Id; readonly mm: number }[];
  readonly leftMm: number;
}

interface TypeCut {
  readonly cuts: readonly RawCut[];
  readonly unplaced: CutList['unplaced'];
}

/** What a person cuts from a certain piece is cut there first; the rest goes where it wastes least. */
function* cutType(
  type: StockType,
  plans: Plan['wires'],
  options: Omit<CutOptions, 'onProgress'>
): CutSteps<TypeCut> {
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
  const cutting = yield* cutPiecesInSteps(free, lengths, options);
  const cuts = type.pieces.flatMap((from) => {
    const cut = cutting.cuts.find(({ stock }) => stock.id === from.id);
    const pieces = [
      ...(chosen.get(from.id) ?? []),
      ...(cut?.pieces ?? []).map(({ id, mm }) => ({ wire: id, mm }))
    ];
    if (pieces.length === 0) return [];
    const leftMm = Math.max(0, from.lengthMm - sumOf(pieces.map(({ mm }) => mm)));
    return [{ from, pieces, leftMm }];
  });
  return { cuts, unplaced: cutting.unplaced.map(({ id, mm }) => ({ wire: id, mm })) };
}

function whatIsLeft({ kind }: Stock, leftMm: number, useful: number): CutFrom['left'] {
  if (leftMm < 0.05) return 'nothing';
  if (kind === 'spool') return 'stays on the spool';
  return leftMm < useful ? 'scrap' : 'an offcut';
}

const sumOf = (lengths: readonly number[]): number => lengths.reduce((sum, mm) => sum + mm, 0);
