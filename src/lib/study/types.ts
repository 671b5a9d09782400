// What the study finds out about a document: nets, what each wire carries, the stress on it,
// the insulation class that it needs and its length. Derived, never stored.
import type { ChassisDocument, Id, Part, Policy, Terminal, Wire } from '#document/index.ts';
import type { FunctionRole } from './function-words.ts';

/** Where a figure comes from. Everything that a person sees of a figure names this. */
export interface Amount {
  /** In the unit of the field's name: volts, amperes or millimetres. */
  readonly value: number;
  /** `declared` on this very wire, `net`: declared on another wire of the net, `part`: an element
   *  or a handbook row of a part on the net, `solved`: reckoned from the whole network. */
  readonly how: 'declared' | 'net' | 'part' | 'solved';
  /** The basis in words, for people: "declared on wire 12". */
  readonly basis: string;
}

/** A rail, a heater line or a signal: what the points of one net share. */
export interface Net {
  /** Stable for a given document: the smallest terminal key in the net. */
  readonly id: string;
  /** "chassis", "B+ 285 V", "heaters", or the first of its terminals: for people. */
  readonly name: string;
  readonly isChassis: boolean;
  /** A supply rail: the policy's floor class holds on it. */
  readonly isSupply: boolean;
  /** It is a rail, or the winding or filament of a rectifier that stands at one. */
  readonly standsOnRail: boolean;
  /** Terminal keys (see `terminalKey`), sorted. */
  readonly terminals: readonly string[];
  readonly wires: readonly Id[];
  readonly dcV: Amount | null;
  readonly acV: Amount | null;
  readonly pulseV: Amount | null;
  /** What the dc rises to before the tubes draw, at high line; null where no source says. */
  readonly coldDcV: Amount | null;
  /** A heater or a filament ends on it. */
  readonly atHeater: boolean;
  /** What the wires' functions say of the net, all of them together. */
  readonly roles: ReadonlySet<FunctionRole>;
}

export interface Stress {
  /** Peak volts that the insulation must stand, to chassis. */
  readonly volts: number;
  /** True where a part of it is not known: the figure is a lower bound. */
  readonly atLeast: boolean;
  /** The dc that was counted, where that is what the rail rises to cold; otherwise null. */
  readonly coldDcV: number | null;
  /** The parts that are missing, in words; empty when none is. */
  readonly missing: readonly string[];
  /** The reckoning in words: "285 V dc + 1.414 x 6.3 V ac". */
  readonly basis: string;
}

export interface Need {
  /** The smallest class on the ladder that covers stress x margin (and the floor of a supply rail). */
  readonly requiredV: number;
  readonly preferredV: number;
  /** The stress asks for more than the ladder's last step: the figures are that last step. */
  readonly beyondLadder: boolean;
  readonly atLeast: boolean;
  /** What the required class has to cover: stress x margin, or the floor of a supply rail. A rating
   *  that reaches it will do, also one between two steps of the ladder. */
  readonly askedV: number;
  /** "18 kV x 1.25 = 22.5 kV" or "supply rail: 600 V at least". */
  readonly basis: string;
}

/** The conductor to put in where nothing is planned yet, by the policy. */
export interface RecommendedConductor {
  readonly awg: number;
  readonly stranding: 'solid' | 'stranded';
  readonly plating: 'bare' | 'tinned';
  /** The class to buy: never below the highest rail of the unit where what it carries is not known. */
  readonly classV: number;
  readonly atLeast: boolean;
  /** "ordinary run: 22 AWG solid tinned". */
  readonly why: string;
  /** What the class rests on: "by what it carries", "as the highest rail there, B+ 285 V". */
  readonly classBasis: string;
}

export interface Rating {
  readonly volts: number;
  readonly kind: 'any' | 'dc' | 'ac' | 'pulse';
  /** "as marked", "UL 1015". */
  readonly basis: string;
}

export interface WireLength {
  readonly mm: number;
  readonly how: 'taped' | 'drawn';
  /** "taped lug to lug", "along 3 supports, 2 D". */
  readonly basis: string;
}

export interface CutLength {
  readonly mm: number;
  readonly slackMm: number;
  readonly stripFromMm: number;
  readonly stripToMm: number;
  readonly basis: string;
}

export interface WireStudy {
  readonly id: Id;
  readonly net: string | null;
  readonly carries: {
    readonly dcV: Amount | null;
    readonly acV: Amount | null;
    readonly pulseV: Amount | null;
    readonly amps: Amount | null;
  };
  /** Null: nothing is known, which is not the same as nothing there. */
  readonly stress: Stress | null;
  /** Null: *not known*. Bare conductors have a need too: that of the sleeve they would want. */
  readonly need: Need | null;
  /** True for bus, braid and component leads without insulation of their own. */
  readonly isBare: boolean;
  readonly foundRating: Rating | null;
  readonly plannedRating: Rating | null;
  readonly length: WireLength | null;
  readonly cut: CutLength | null;
  /** Gauge that was found, else planned, else null. */
  readonly awg: number | null;
  /** Null where no wire is to be bought: a component's own lead, a wire that is itself a part. */
  readonly recommended: RecommendedConductor | null;
  /** What the wire's own function says. */
  readonly roles: ReadonlySet<FunctionRole>;
}

/** A terminal that exists, with the part it belongs to. */
export interface TerminalEntry {
  /** See `terminalKey`. */
  readonly key: string;
  /** Its place in `DocumentIndex.terminals`. */
  readonly number: number;
  readonly part: Part;
  readonly terminal: Terminal;
}

/** The document's references resolved once, for everything that reads it. */
export interface DocumentIndex {
  readonly wires: readonly Wire[];
  readonly parts: readonly Part[];
  readonly partById: ReadonlyMap<Id, Part>;
  /** All terminals, part by part. */
  readonly terminals: readonly TerminalEntry[];
  readonly terminalByKey: ReadonlyMap<string, TerminalEntry>;
  readonly terminalsOf: ReadonlyMap<Id, readonly Terminal[]>;
  /** By terminal key: the wires that end there, in order. */
  readonly wiresAt: ReadonlyMap<string, readonly Wire[]>;
  /** By terminal key: the leads of other parts that are soldered to it, in order. */
  readonly leadsOn: ReadonlyMap<string, readonly TerminalEntry[]>;
  /** The terminal that an end is at; undefined where nobody found it, or it is missing. */
  readonly findAt: (end: Wire['from']) => TerminalEntry | undefined;
  /** "V3-5", "T1 red", "chassis at G3", or what was written down for an end not found. */
  readonly labelOf: (end: Wire['from']) => string;
}

export interface Study {
  readonly document: ChassisDocument;
  readonly policy: Policy;
  readonly index: DocumentIndex;
  readonly nets: ReadonlyMap<string, Net>;
  /** Terminal key to net id. */
  readonly netOf: ReadonlyMap<string, string>;
  /** Terminal key to the point that it belongs to when no wire is counted: a lug with the leads
   *  soldered to it, a plug's pin with the jack's, all that sits on one metal. */
  readonly pointOf: ReadonlyMap<string, number>;
  /** The point of the main chassis. */
  readonly chassisPoint: number;
  readonly wires: ReadonlyMap<Id, WireStudy>;
}

/** Bands of insulation class that colour, dash and width tell apart. */
export const classBands = ['300', '600', '1k-3k', '5k-15k', '20k+', 'not known'] as const;
export type ClassBand = (typeof classBands)[number];

/** The band of a needed class in volts; null is *not known*, never the lowest band. */
export const classBandOf = (requiredV: number | null): ClassBand =>
  requiredV === null
    ? 'not known'
    : requiredV <= 300
      ? '300'
      : requiredV <= 600
        ? '600'
        : requiredV <= 3000
          ? '1k-3k'
          : requiredV <= 15_000
            ? '5k-15k'
            : '20k+';
