// What to buy: the lengths that the shelf has not, as wire is sold, and the small things that go with
// the work. Prices are those that the shelf gives for the like; where it gives none, none is made up.
import type { Id } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { bundle } from '#physics/bundle.ts';
import { SumError } from '#physics/sum-error.ts';
import { formatMm } from '#quantity/index.ts';
import type { Study } from '#study/index.ts';
import type { CutList } from './cut-list.ts';
import { cutPieces } from './cutting/cut-pieces.ts';
import { ratingFor } from './judge-offer.ts';
import { lookFor } from './look-for.ts';
import type { Plan, WirePlan } from './types.ts';

export interface ShoppingLine {
  readonly kind: 'wire' | 'sleeve' | 'clamp' | 'tie' | 'grommet' | 'fitting';
  /** In general terms. */
  readonly what: string;
  /** Pieces or sold lengths to buy; null where a length is not known. */
  readonly count: number | null;
  /** Of one sold length, mm; null for things bought by the piece. */
  readonly soldMm: number | null;
  /** What is needed of it, mm; null for things bought by the piece, and where not known. */
  readonly neededMm: number | null;
  /** In the shelf's own money; null where the shelf gives no price for the like. */
  readonly price: number | null;
  readonly wires: readonly Id[];
  readonly notes: string | null;
}

export interface ShoppingList {
  readonly lines: readonly ShoppingLine[];
  /** The prices that are known, added. */
  readonly total: number;
  /** False where a line has no price: the total is then "at least". */
  readonly isWhole: boolean;
}

export interface SoldAs {
  /** Hook-up wire comes on spools of these lengths, mm; shortest first. */
  readonly spoolsMm: readonly number[];
  /** High-voltage lead, cable and sleeve are cut to multiples of this, mm. */
  readonly byMm: number;
}

/** Common practice, no source: spools of 25 and 100 ft, the rest by the foot. */
export const soldByTheFoot: SoldAs = { spoolsMm: [7620, 30_480], byMm: 304.8 };
/** Common practice, no source: rings of 10 and 50 m, the rest by the half metre. */
export const soldByTheMetre: SoldAs = { spoolsMm: [10_000, 50_000], byMm: 500 };

/** Wire of this class and above is sold by length, not on spools. Common practice, no source. */
const byLengthFromV = 3000;

export function buildShoppingList(
  study: Study,
  plan: Plan,
  cuts: CutList,
  chance: () => number,
  sold: SoldAs = soldByTheFoot
): ShoppingList {
  const lines = [
    ...wireLines(plan, cuts, chance, sold),
    ...sleeveLines(study, plan, sold),
    ...supportLines(study, plan),
    ...fittingLines(study, plan)
  ];
  return {
    lines,
    total: lines.reduce((sum, { price }) => sum + (price ?? 0), 0),
    isWhole: lines.every(({ price }) => price !== null)
  };
}

const isToDo = ({ by, way }: WirePlan): boolean => by !== 'done' && way !== 'keep';

function wireLines(plan: Plan, cuts: CutList, chance: () => number, sold: SoldAs): ShoppingLine[] {
  const short = new Set(cuts.unplaced.map(({ wire }) => wire));
  const groups = new Map<string, WirePlan[]>();
  for (const own of plan.wires) {
    const what = own.unmet?.lookFor ?? (short.has(own.wire) && own.want ? lookFor(own.want) : null);
    if (what !== null) groups.set(what, [...(groups.get(what) ?? []), own]);
  }
  return [...groups].map(([what, plans]) => wireLine(plan, what, plans, chance, sold));
}

function wireLine(
  plan: Plan,
  what: string,
  plans: readonly WirePlan[],
  chance: () => number,
  sold: SoldAs
): ShoppingLine {
  const pieces = plans.flatMap(({ wire, cutMm }) =>
    cutMm === null ? [] : [{ id: wire, mm: cutMm }]
  );
  const unknown = plans.length - pieces.length;
  const neededMm = pieces.reduce((sum, { mm }) => sum + mm, 0);
  const want = plans[0]?.want;
  const byLength = want?.form !== 'insulated' || want.classV >= byLengthFromV;
  const { soldMm, count } =
    pieces.length === 0
      ? { soldMm: null, count: null }
      : byLength
        ? { soldMm: sold.byMm, count: Math.ceil(neededMm / sold.byMm - 1e-9) }
        : spoolsFor(pieces, chance, sold);
  const perMetre = want ? priceOfTheLike(plan, want) : null;
  return {
    kind: 'wire',
    what,
    count,
    soldMm,
    neededMm: pieces.length === 0 ? null : neededMm,
    price:
      count === null || perMetre === null || unknown > 0
        ? null
        : (perMetre * count * (soldMm ?? 0)) / 1000,
    wires: plans.map(({ wire }) => wire),
    notes:
      unknown === 0 ? null : `of ${unknown} of them the length is not known: tape before you buy`
  };
}

/** As few short spools as hold the pieces, or long ones where that buys no more. */
function spoolsFor(
  pieces: readonly { id: string; mm: number }[],
  chance: () => number,
  { spoolsMm, byMm }: SoldAs
): { soldMm: number; count: number } {
  const choices = spoolsMm.flatMap((soldMm) => {
    const spools = pieces.map((_, at) => ({
      id: `s${at}`,
      lengthMm: soldMm,
      kind: 'new length' as const
    }));
    const { cuts, unplaced } = cutPieces(pieces, spools, { chance, rounds: 50 });
    return unplaced.length > 0 ? [] : [{ soldMm, count: cuts.length }];
  });
  const [first, ...rest] = choices;
  if (!first) {
    const longest = Math.max(...pieces.map(({ mm }) => mm));
    return { soldMm: Math.ceil(longest / byMm) * byMm, count: pieces.length };
  }
  return rest.reduce((a, b) => (b.count * b.soldMm <= a.count * a.soldMm ? b : a), first);
}

/** What the shelf's own wire of that gauge and class cost a metre; null where it does not say. */
function priceOfTheLike(plan: Plan, want: NonNullable<WirePlan['want']>): number | null {
  const prices = plan.stockTypes.flatMap((type) => {
    const { volts } = ratingFor(type, want.kinds);
    const isLike = type.form === want.form && type.awg === want.awg && (volts ?? 0) >= want.ratingV;
    return isLike ? type.pieces.flatMap(({ pricePerMetre }) => pricePerMetre ?? []) : [];
  });
  return prices.length === 0 ? null : Math.max(...prices);
}

const byPiece = { soldMm: null, neededMm: null, price: null, notes: null } as const;

function sleeveLines(study: Study, plan: Plan, sold: SoldAs): ShoppingLine[] {
  const sizes = new Map<number, { wires: Id[]; mm: number; isKnown: boolean }>();
  const written = new Map<string, Id[]>();
  for (const own of plan.wires.filter(isToDo)) {
    const { sleeve } = own;
    if (sleeve) {
      const size = sizes.get(sleeve.suppliedMm) ?? { wires: [], mm: 0, isKnown: true };
      size.wires.push(own.wire);
      size.mm += (sleeve.lengthMm ?? 0) * sleeve.count;
      size.isKnown &&= sleeve.lengthMm !== null;
      sizes.set(sleeve.suppliedMm, size);
    }
    const wire = findElement(study.document.wires, own.wire);
    for (const end of wire ? [wire.from, wire.to] : [])
      if (end.sleeve) written.set(end.sleeve, [...(written.get(end.sleeve) ?? []), own.wire]);
  }
  const reckoned = [...sizes].map(([suppliedMm, { wires, mm, isKnown }]): ShoppingLine => ({
    ...byPiece,
    kind: 'sleeve',
    what: `shrink sleeve, ${formatMm(suppliedMm)} inside as supplied, 2 to 1, rated 600 V at least`,
    count: isKnown ? Math.ceil(mm / sold.byMm - 1e-9) : null,
    soldMm: sold.byMm,
    neededMm: isKnown ? mm : null,
    wires,
    notes: isKnown ? null : 'the length of some is not known'
  }));
  const asWritten = [...written].map(([words, wires]): ShoppingLine => ({
    ...byPiece,
    kind: 'sleeve',
    what: `sleeve for an end: ${words}`,
    count: wires.length,
    wires: [...new Set(wires)]
  }));
  return [...reckoned, ...asWritten];
}

/** Ties are cut, and old rubber does not go back: one for each place that is opened. A clamp is used again
 *  where it is sound. Common practice, no source. */
function supportLines(study: Study, plan: Plan): ShoppingLine[] {
  const lines = new Map<string, ShoppingLine>();
  const toDo = new Set(plan.wires.filter(isToDo).map(({ wire }) => wire));
  for (const support of Object.values(study.document.supports)) {
    const { kind, boreMm } = support;
    if (kind === 'hole' || kind === 'corner') continue;
    const through = study.index.wires.filter(({ route }) => route?.supports.includes(support.id));
    const opened = through.filter(({ id }) => toDo.has(id)).map(({ id }) => id);
    if (opened.length === 0) continue;
    const what =
      kind === 'tie'
        ? 'lacing tie'
        : kind === 'grommet'
          ? `grommet${boreMm === undefined ? ', bore as the old one' : `, ${formatMm(boreMm)} bore`}`
          : `cushioned clamp${clampSize(
              study,
              through.map(({ id }) => id)
            )}, if the old one is bad`;
    const known = lines.get(what);
    lines.set(what, {
      ...byPiece,
      kind,
      what,
      count: (known?.count ?? 0) + 1,
      wires: [...new Set([...(known?.wires ?? []), ...opened])]
    });
  }
  return [...lines.values()];
}

function clampSize(study: Study, wires: readonly Id[]): string {
  const outsides = wires.map((id) => study.wires.get(id)?.conductor.outsideMm ?? null);
  const known = outsides.filter((mm) => mm !== null);
  if (known.length < outsides.length || known.length === 0) return ', size as the old one';
  try {
    return `, ${bundle(known).clampSixteenths}/16 in`;
  } catch (problem) {
    if (problem instanceof SumError) return ', size as the old one';
    throw problem;
  }
}

function fittingLines(study: Study, plan: Plan): ShoppingLine[] {
  const lines = new Map<string, ShoppingLine>();
  const add = (what: string, wire: Id): void => {
    const known = lines.get(what);
    lines.set(what, {
      ...byPiece,
      kind: 'fitting',
      what,
      count: (known?.count ?? 0) + 1,
      wires: [...(known?.wires ?? []), wire]
    });
  };
  const cables = new Set<Id>();
  for (const own of plan.wires) {
    if (!isToDo(own) || own.way !== 'new wire') continue;
    const wire = findElement(study.document.wires, own.wire);
    if (!wire) continue;
    for (const end of [wire.from, wire.to]) {
      const at = study.index.findAt(end);
      const what = at ? fittingOf(at.part.kind, at.terminal.ending ?? end.termination) : null;
      if (what !== null) add(what, wire.id);
    }
    const cable =
      wire.cable === undefined ? undefined : findElement(study.document.cables, wire.cable);
    if (!cable || cables.has(cable.id)) continue;
    cables.add(cable.id);
    for (const words of [cable.fittings?.from, cable.fittings?.to])
      if (words !== undefined && !/^lugs?$/i.test(words)) add(words, wire.id);
  }
  return [...lines.values()];
}

function fittingOf(partKind: string, ending: string | undefined): string | null {
  if (partKind === 'picture tube' && ending === 'cap')
    return 'second-anode clip with its insulating cup';
  if (ending === 'cap') return 'insulated clip for a top cap, with boot';
  if (ending === 'clip') return 'clip, as the old one';
  return null;
}
