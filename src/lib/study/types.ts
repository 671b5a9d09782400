// What the study finds out about a document: nets, what each wire carries, the stress on it,
// the insulation class that it needs and its length. Derived, never stored.
import type { ChassisDocument, Id, Part, Policy, Terminal, Wire } from '#document/index.ts';
import type { PlacedElement } from './circuit-elements.ts';
import type { Conductor } from './conductor-in-place.ts';
import type { FunctionRole } from './function-words.ts';
import type { NetworkStudy } from './network/network-study.ts';

/** Where a figure comes from. Everything that a person sees of a figure names this. */
export interface Amount {
  /** In the unit of the field's name: volts, amperes or millimetres. */
  readonly value: number;
  /** `declared` on this very wire, `net`: declared on another wire of the net, `part`: an element
   *  or a handbook row of a part on the net, `solved`: reckoned from the whole network. */
  readonly how: 'declared' | 'net' | 'part' | 'solved';
  /** The basis in words, for people: "declared on wire 12". */
  readonly basis: string;
  /** Of a solved figure: what nobody described and may change it, in words. Without it the figure is
   *  all that can be there. */
  readonly doubt?: string;
}

/** The current of a wire as the whole network has it. */
export interface WireCurrent {
  /** From the wire's first end to its second; null where the dc circuit does not tell. */
  readonly dcA: number | null;
  /** Rms, of the line's frequency; against the phase of the dc's sign it is negative. */
  readonly acA: number | null;
  /** Both together, rms. */
  readonly amps: number;
  /** From which end to which the larger of the two flows; null where nothing does. */
  readonly flows: 'from to to' | 'to to from' | null;
  readonly basis: string;
  readonly doubt?: string;
}

/** Volts of one terminal, as the whole network has them. Null: the circuit does not tell. */
export interface TerminalVolts {
  readonly dcV: number | null;
  /** Before the tubes draw, at high line. */
  readonly coldDcV: number | null;
  /** Rms; negative where it is against the phase of the line's first source. */
  readonly acV: number | null;
  /** What the volts are counted from where that is not the chassis: a floating B-, for one. */
  readonly countedFrom: string | null;
}

/** What the network says of one element of a part. Null: the circuit does not tell. */
export interface ElementState {
  /** From its first terminal to its second. */
  readonly dcV: number | null;
  readonly acV: number | null;
  /** Rms, both kinds together. */
  readonly volts: number | null;
  readonly amps: number | null;
  /** What may change it; null where nothing is left open. */
  readonly doubt: string | null;
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
  /** It is connected to the power line, by way of fuses and switches too: see `line-side.ts`. */
  readonly onLineSide: boolean;
  /** Terminal keys (see `terminalKey`), sorted. */
  readonly terminals: readonly string[];
  readonly wires: readonly Id[];
  readonly dcV: Amount | null;
  readonly acV: Amount | null;
  readonly pulseV: Amount | null;
  /** What the dc rises to before the tubes draw, at high line; null where no source says. */
  readonly coldDcV: Amount | null;
  /** The dc that the whole network gives, whatever was declared; null where it does not tell. */
  readonly solvedDcV: Amount | null;
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
  /** What makes up the figure: cold there is no signal and no pulse yet. */
  readonly made: { readonly dcV: number; readonly acV: number; readonly pulseV: number };
  /** The wire beside it that stands the other way from the chassis or swings against it, as ac of unknown
   *  phase is taken to, where the difference to that one counts; otherwise null. */
  readonly beside: { readonly wire: Id; readonly words: string } | null;
  /** The parts that are missing, in words; empty when none is. */
  readonly missing: readonly string[];
  /** The reckoning in words: "285 V dc + 1.414 x 6.3 V ac". */
  readonly basis: string;
}

export interface Need {
  /** The smallest class on the ladder that covers stress x margin, and the floor of a supply rail or of
   *  the line side. */
  readonly requiredV: number;
  readonly preferredV: number;
  /** The stress asks for more than the ladder's last step: the figures are that last step. */
  readonly beyondLadder: boolean;
  readonly atLeast: boolean;
  /** What the required class has to cover: stress x margin, or the floor. A rating that reaches it will do, also one between two steps of the ladder. */
  readonly askedV: number;
  /** "18 kV x 1.25 = 22.5 kV" or "supply rail: 600 V at least (150 V x 1.25 = 187.5 V)". */
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
  /** What the network says flows in it; null where the circuit does not tell. */
  readonly current: WireCurrent | null;
  /** The conductor that lies there now. */
  readonly conductor: Conductor;
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
  /** A part's terminals as entries, in the same order. */
  readonly entriesOf: ReadonlyMap<Part, readonly TerminalEntry[]>;
  /** By terminal key: the wires that end there, in order. */
  readonly wiresAt: ReadonlyMap<string, readonly Wire[]>;
  /** By terminal key: the leads of other parts that are soldered to it, in order. */
  readonly leadsOn: ReadonlyMap<string, readonly TerminalEntry[]>;
  /** The terminal that an end is at; undefined where nobody found it, or it is missing. */
  readonly findAt: (end: Wire['from']) => TerminalEntry | undefined;
  /** "V3-5", "T1 red", "chassis at G3", or what was written down for an end not found. */
  readonly labelOf: (end: Wire['from']) => string;
}

/** Wires that are held together at a support, that run together between two stops, or that are the
 *  conductors of one cable. */
export interface Bundle {
  readonly id: string;
  /** The support; null for a stretch between two stops, and for a cable. */
  readonly support: Id | null;
  readonly cable: Id | null;
  /** In the order of the document. */
  readonly wires: readonly Id[];
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
  /** The electrical elements of all parts; those of heaters and plain values are filled in. */
  readonly elements: readonly PlacedElement[];
  readonly network: NetworkStudy;
  readonly bundles: readonly Bundle[];
  /** By wire: the bundles that it is in. */
  readonly bundlesOf: ReadonlyMap<Id, readonly Bundle[]>;
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
