// What a plan says of each wire: what has to take its place, what there is for it, and what a person's
// own choice costs. Derived from document and study, never stored.
import type { Id, Stock, WireWay } from '#document/index.ts';

export type VoltsKind = 'dc' | 'ac' | 'pulse';

/** What a wire's replacement must be at the least. */
export interface WireWant {
  /** Rated volts at least: stress x margin, or a floor. */
  readonly ratingV: number;
  /** The class that is bought for it. */
  readonly classV: number;
  /** True where what the wire carries is not known in full. */
  readonly atLeast: boolean;
  readonly ratingBasis: string;
  /** Kinds of voltage that the rating must hold for. */
  readonly kinds: readonly VoltsKind[];
  /** No thinner than this. */
  readonly awg: number;
  readonly awgBasis: string;
  readonly stranding: 'solid' | 'stranded';
  readonly plating: 'bare' | 'tinned';
  readonly celsius: number;
  readonly celsiusBasis: string;
  readonly form: WireForm;
  readonly colour: string | null;
  readonly tracer: string | null;
}

/** What kind of thing it is that is cut off: a cable is cut as one. */
export type WireForm = 'insulated' | 'bare' | 'braid' | 'coax' | 'twin lead' | 'cable';

/** A conductor that is offered for a wire, from the shelf or as somebody planned it. */
export interface Offer {
  readonly name: string;
  readonly form: WireForm;
  readonly awg: number | null;
  readonly stranding: 'solid' | 'stranded' | null;
  readonly plating: 'bare' | 'tinned' | null;
  readonly celsius: number | null;
  /** Peak volts by kind; `any` holds for all. */
  readonly ratings: Readonly<Partial<Record<VoltsKind | 'any', number>>>;
  readonly style: string | null;
  readonly insulation: string | null;
  readonly colour: string | null;
  readonly tracer: string | null;
}

/** Pieces of the shelf that are the same wire and may stand in for each other. */
export interface StockType extends Offer {
  readonly key: string;
  readonly pieces: readonly Stock[];
  readonly onHandMm: number;
}

export interface Margin {
  /** Rated volts for the kinds that the wire carries; null where it has no rating for one of them. */
  readonly ratingV: number | null;
  readonly stressV: number | null;
  /** Rating over stress; null where either is not known, or there is no stress. */
  readonly ratio: number | null;
  readonly words: string;
}

/** One of the four ways of a wire, and whether it is open. */
export interface WayVerdict {
  readonly way: WireWay;
  readonly isOpen: boolean;
  /** Why it is not, or what it takes. */
  readonly words: string;
  readonly sleeve: PlannedSleeve | null;
}

export interface PlannedSleeve {
  /** Inside diameter as supplied, and after free shrinking, mm. */
  readonly suppliedMm: number;
  readonly recoveredMm: number;
  /** Wall when it has shrunk onto what it goes over, mm. */
  readonly wallMm: number;
  readonly lengthMm: number | null;
  readonly count: number;
  readonly words: string;
}

export interface WirePlan {
  readonly wire: Id;
  readonly way: WireWay;
  /** `person`: it was chosen, and the choice stands. `done`: fitted already. */
  readonly by: 'person' | 'proposal' | 'done';
  readonly why: string;
  readonly ways: readonly WayVerdict[];
  /** Null where no wire is to be bought or cut. */
  readonly want: WireWant | null;
  /** What will lie there; null where nothing new will. */
  readonly offer: Offer | null;
  /** Of the shelf, where it is cut from there. */
  readonly stockType: StockType | null;
  /** The one piece that a person chose. */
  readonly stock: Id | null;
  /** To cut; null where the length is not known, or nothing is cut. */
  readonly cutMm: number | null;
  readonly margin: Margin | null;
  /** What the choice falls short of, each in words with its figure; empty where of nothing. */
  readonly costs: readonly string[];
  /** Nothing on the shelf will do, or there is too little: why, and what to look for. */
  readonly unmet: { readonly why: string; readonly lookFor: string } | null;
  /** What to know at the bench. */
  readonly notes: readonly string[];
  readonly sleeve: PlannedSleeve | null;
}

export interface PlanOptions {
  /** Colours as they were found, or by the chassis wiring code. */
  readonly colours?: 'as found' | 'code';
}

export interface Plan {
  readonly wires: readonly WirePlan[];
  readonly byWire: ReadonlyMap<Id, WirePlan>;
  readonly stockTypes: readonly StockType[];
}
