// The leads at a terminal as a person with a lamp sees them: ends of wires and leads of parts alike, each
// with its colour and where its other end is. Leads counted there against those written down.
import type { Part, TerminalRef, Wire, WireEnd } from '#document/index.ts';
import type { Study, TerminalEntry } from '#study/index.ts';
import { keyOfRef, terminalKey } from '#study/terminal-key.ts';

/** The other end of a lead. */
export interface FarEnd {
  /** A terminal, or the words that were written for it; "" where there is nothing yet. */
  readonly label: string;
  readonly isFound: boolean;
  readonly known: WireEnd['known'];
}

export interface WireLead {
  readonly kind: 'wire';
  /** Tells the leads of one terminal apart; the same for the same lead. */
  readonly key: string;
  readonly wire: Wire;
  /** The end of the wire that is here. */
  readonly here: 'from' | 'to';
  readonly far: FarEnd;
}

export interface PartLead {
  readonly kind: 'part';
  readonly key: string;
  readonly part: Part;
  /** The part's own terminal that is soldered here. */
  readonly terminal: string;
  /** Its other lead; null for a part that has not two. */
  readonly other: string | null;
  readonly far: FarEnd;
}

export type Lead = WireLead | PartLead;

export const wireLeadKey = (wire: string, here: 'from' | 'to'): string => `wire ${wire} ${here}`;
export const partLeadKey = (part: string, terminal: string): string =>
  `part ${terminalKey(part, terminal)}`;

/** The other side of a wire. */
export const otherEnd = (end: 'from' | 'to'): 'from' | 'to' => (end === 'from' ? 'to' : 'from');

const farOfWire = (study: Study, end: WireEnd): FarEnd => {
  const label = study.index.labelOf(end);
  const isFound = end.at !== undefined;
  return { label: !isFound && label === '?' ? '' : label, isFound, known: end.known };
};

/** A part's other lead is found where it is soldered to something, or something is soldered to it. */
const farOfPart = (study: Study, part: Part, other: string | null): FarEnd => {
  const terminal = other === null ? undefined : part.terminals[other];
  if (terminal === undefined) return { label: '', isFound: true, known: 'seen' };
  const { index } = study;
  const key = terminalKey(part.id, terminal.id);
  const meets = (index.wiresAt.get(key)?.length ?? 0) + (index.leadsOn.get(key)?.length ?? 0);
  const label =
    terminal.on === undefined
      ? (terminal.notes ?? '')
      : index.labelOf({ at: terminal.on, known: 'seen' });
  return { label, isFound: terminal.on !== undefined || meets > 0, known: 'seen' };
};

const wireLeads = (study: Study, key: string): WireLead[] =>
  (study.index.wiresAt.get(key) ?? []).flatMap((wire) =>
    (['from', 'to'] as const).flatMap((here): WireLead[] => {
      const { at } = wire[here];
      if (at === undefined || keyOfRef(at) !== key) return [];
      const far = farOfWire(study, wire[otherEnd(here)]);
      return [{ kind: 'wire', key: wireLeadKey(wire.id, here), wire, here, far }];
    })
  );

const partLeads = (study: Study, key: string): PartLead[] =>
  (study.index.leadsOn.get(key) ?? []).map(({ part, terminal }) => {
    const others = Object.keys(part.terminals).filter((id) => id !== terminal.id);
    const other = others.length === 1 ? (others[0] ?? null) : null;
    const far = farOfPart(study, part, other);
    return {
      kind: 'part',
      key: partLeadKey(part.id, terminal.id),
      part,
      terminal: terminal.id,
      other,
      far
    };
  });

/** All leads at a terminal: wires in the schedule's order, then parts. A wire that begins and ends on
 *  one terminal is two leads. */
export const leadsAtTerminal = (study: Study, key: string): readonly Lead[] => [
  ...wireLeads(study, key),
  ...partLeads(study, key)
];

export interface LeadCount {
  readonly recorded: number;
  /** Null: nobody has counted. */
  readonly counted: number | null;
  /** Counted and not recorded; negative where more are recorded than were counted. Null as above. */
  readonly unaccounted: number | null;
}

export const countLeads = (study: Study, { key, terminal }: TerminalEntry): LeadCount => {
  const recorded = leadsAtTerminal(study, key).length;
  const counted = terminal.leadsCounted ?? null;
  return { recorded, counted, unaccounted: counted === null ? null : counted - recorded };
};

/** Where a terminal's entry is, as the document refers to it. */
export const refOf = ({ part, terminal }: TerminalEntry): TerminalRef => ({
  part: part.id,
  terminal: terminal.id
});
