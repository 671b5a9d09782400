// Which of the shelf goes to which wire: the smallest that is enough, in the colour as found, out of as
// few different spools as may be, and only as long as there is enough of it.
import type { Id, Stock, Wire } from '#document/index.ts';
import { parseColour } from '#handbook/index.ts';
import type { Study, WireStudy } from '#study/index.ts';
import { judgeOffer, ratingFor } from './judge-offer.ts';
import type { StockType, WireWant } from './types.ts';

export interface Seeker {
  readonly wire: Wire;
  readonly about: WireStudy;
  readonly want: WireWant;
  /** Null where nobody knows the length: a type is named, nothing is cut. */
  readonly cutMm: number | null;
  /** The piece that a person chose. */
  readonly stock: Id | null;
  /** True for types that answer to what a person planned; every type, where nobody planned one. */
  readonly isAskedFor: (type: StockType) => boolean;
  /** A person's own words decide, also against the want. */
  readonly isFree: boolean;
}

export interface Picked {
  readonly type: StockType | null;
  /** Why nothing was picked; null where something was. */
  readonly why: string | null;
}

export function pickFromShelf(
  study: Study,
  seekers: readonly Seeker[],
  types: readonly StockType[]
): ReadonlyMap<Id, Picked> {
  const picked = new Map<Id, Picked>();
  const room = new Map(
    types.map((type) => [type.key, type.pieces.map(({ lengthMm }) => lengthMm)])
  );
  const used = new Set<string>();
  const offers = seekers.map((seeker) => ({ seeker, fitting: fittingTypes(study, seeker, types) }));
  // Wires that few types will do for come first, and the long before the short.
  const inTurn = [...offers].sort(
    (a, b) =>
      Number(b.seeker.stock !== null) - Number(a.seeker.stock !== null) ||
      a.fitting.length - b.fitting.length ||
      (b.seeker.cutMm ?? 0) - (a.seeker.cutMm ?? 0)
  );
  for (const { seeker, fitting } of inTurn) {
    const ranked = [...fitting].sort((a, b) => compare(study, seeker, used, a, b));
    const type = ranked.find((each) => takeLength(each, seeker, room.get(each.key) ?? []));
    if (type) used.add(type.key);
    picked.set(seeker.wire.id, {
      type: type ?? null,
      why: type ? null : whyNone(study, seeker, types, ranked)
    });
  }
  return picked;
}

function fittingTypes(
  study: Study,
  { wire, about, want, stock, isAskedFor, isFree }: Seeker,
  types: readonly StockType[]
): readonly StockType[] {
  const asked = types.filter(
    (type) =>
      isAskedFor(type) && (stock === null || type.pieces.some((piece) => piece.id === stock))
  );
  if (isFree) return asked;
  return asked.filter((type) => judgeOffer(study, wire, about, want, type).shortfalls.length === 0);
}

/** Takes the length out of the shortest piece that holds it; false where none does. */
function takeLength(type: StockType, { cutMm, stock }: Seeker, left: number[]): boolean {
  if (cutMm === null) return true;
  let best = -1;
  type.pieces.forEach((piece: Stock, at) => {
    const own = left[at] ?? 0;
    if (own < cutMm || (stock !== null && piece.id !== stock)) return;
    if (best < 0 || own < (left[best] ?? 0)) best = at;
  });
  if (best < 0) return false;
  left[best] = (left[best] ?? 0) - cutMm;
  return true;
}

function compare(
  study: Study,
  { want }: Seeker,
  used: ReadonlySet<string>,
  a: StockType,
  b: StockType
): number {
  const [first, second] = [a, b].map((type) => [
    stepOf(study, ratingFor(type, want.kinds).volts),
    want.awg - (type.awg ?? want.awg),
    colourDistance(want, type),
    used.has(type.key) ? 0 : 1,
    type.stranding === want.stranding ? 0 : 1
  ]) as [number[], number[]];
  for (const [at, value] of first.entries()) {
    const difference = value - (second[at] ?? 0);
    if (difference !== 0) return difference;
  }
  return 0;
}

const stepOf = ({ policy }: Study, volts: number | null): number => {
  const at = policy.ladderV.findIndex((step) => step >= (volts ?? Infinity));
  return at < 0 ? policy.ladderV.length : at;
};

/** Colours that the wiring code gives no function that would be missed: they mislead least. */
const plainColours: ReadonlySet<string | null> = new Set(['white', 'natural', 'clear']);

/** 0: colour and tracer as wanted, or none wanted; 1: the colour with another tracer; 2: plain white in
 *  its place; 3: another colour. */
export function colourDistance(
  want: Pick<WireWant, 'colour' | 'tracer'>,
  offer: Pick<StockType, 'colour' | 'tracer'>
): 0 | 1 | 2 | 3 {
  if (want.colour === null) return 0;
  const [wanted, given] = [nameOf(want.colour), nameOf(offer.colour)];
  if (wanted !== given) return plainColours.has(given) ? 2 : 3;
  return nameOf(want.tracer) === nameOf(offer.tracer) ? 0 : 1;
}

const nameOf = (text: string | null): string | null =>
  text === null ? null : (parseColour(text)?.colour ?? text.trim().toLowerCase());

function whyNone(
  study: Study,
  { wire, about, want, cutMm, stock, isAskedFor }: Seeker,
  types: readonly StockType[],
  fitting: readonly StockType[]
): string {
  if (types.length === 0) return 'nothing is on the shelf';
  if (fitting.length > 0) {
    return cutMm === null
      ? 'too little is left on the shelf'
      : 'no piece of it that is left on the shelf is long enough';
  }
  if (stock !== null) return 'the piece that was chosen is not on the shelf';
  const asked = types.filter(isAskedFor);
  if (asked.length === 0) return 'nothing on the shelf is what was planned';
  const nearest = asked
    .map((type) => ({ type, own: judgeOffer(study, wire, about, want, type).shortfalls }))
    .sort((a, b) => a.own.length - b.own.length)[0];
  return nearest
    ? `nothing on the shelf will do; nearest is ${nearest.type.name}: ${nearest.own.join('; ')}`
    : 'nothing on the shelf will do';
}
