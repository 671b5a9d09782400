// What may be said of a part or a wire when a chassis is built by hand. Names stand for ids.
import type { Wire, WireEnd } from '#document/index.ts';
import type { Spot } from './chassis-places.ts';

/** "V1-5", "TS1:2", "T1 red", "GL1" (a part with one terminal); null where nobody found the end. */
export type End = string | null;

export interface TerminalSpec {
  readonly name: string;
  readonly offset?: Spot;
  readonly heightMm?: number;
  readonly ending?: string;
  readonly grounded?: boolean;
  /** The terminal of another part that this one is soldered to, with no wire between. */
  readonly on?: string;
  readonly leadsCounted?: number;
}

/** Terminals by their names; ids are filled in. `to` left out means the unit's metal. */
export type ElementSpec = { readonly kind: string; readonly from: string; readonly to?: string } & {
  readonly [field: string]: unknown;
};

export interface PartOptions {
  readonly at?: Spot;
  readonly rotation?: number;
  readonly face?: 'below' | 'above';
  readonly type?: string;
  readonly value?: string;
  readonly function?: string;
  /** The reference of the plug or jack that this one mates with. */
  readonly mates?: string;
  readonly elements?: readonly ElementSpec[];
  readonly notes?: string;
  /** The unit's name; the unit that was named last where left out. */
  readonly unit?: string;
}

export interface WireOptions {
  readonly function?: string;
  readonly construction?: string;
  readonly dcV?: number;
  readonly acV?: number;
  readonly pulseV?: number;
  readonly amps?: number;
  readonly awg?: number;
  readonly colour?: string;
  readonly tracer?: string;
  readonly insulation?: string;
  readonly ratingV?: number;
  readonly ratingKind?: 'any' | 'dc' | 'ac' | 'pulse';
  readonly condition?: string;
  /** More of what was found: stranding, style, diameter … */
  readonly found?: Wire['found'];
  readonly planned?: Wire['planned'];
  readonly serviceData?: Wire['planned'];
  readonly cable?: string;
  readonly conductor?: string;
  readonly origin?: 'original' | 'earlier repair' | 'modification';
  /** Names of supports in order; "unit name/support name" where a name occurs in two units. */
  readonly route?: readonly string[];
  readonly outsideMm?: number;
  readonly tapedMm?: number;
  readonly critical?: Wire['critical'];
  readonly dress?: string;
  readonly isPart?: Wire['isPart'];
  readonly state?: Wire['state'];
  readonly notes?: string;
  /** More about an end: `known`, `as`, `termination`, `stripMm`, `sleeve`. */
  readonly fromEnd?: Partial<WireEnd>;
  readonly toEnd?: Partial<WireEnd>;
}
