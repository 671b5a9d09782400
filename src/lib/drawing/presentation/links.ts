// What the diagram has to show between terminals, and how: a line, or a mark at each end.
// Chassis ground is a mark at the terminal, never a hub; an end that nobody has found is a stub.
import type { Id, Part, Terminal, Wire } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { terminalLabel } from '#document/references.ts';
import type { Study } from '#study/index.ts';
import { isTwoLead } from '../figures/two-lead.ts';
import { isMetal, resolveEnd, type PartMap, type TerminalPlace } from './terminals.ts';

/** A line from one terminal to another. A null terminal is the mouth of a plug's cable. */
export interface Link {
  readonly id: string;
  /** `lead`: a component's own lead on another part's terminal; `mates`: a plug in its jack;
   *  `trunk`: all wires of a cable between two plugs. */
  readonly kind: 'wire' | 'lead' | 'mates' | 'trunk';
  readonly from: LinkEnd;
  readonly to: LinkEnd;
  /** The wires it stands for. */
  readonly wires: readonly Id[];
}

export interface LinkEnd {
  readonly part: Id;
  readonly terminal: Id | null;
}

/** An end that is drawn as a mark beside its terminal. */
export interface Mark {
  readonly id: string;
  readonly part: Id;
  readonly terminal: Id;
  /** `ground`: goes to the metal elsewhere; `metal`: this terminal is the metal;
   *  `component`: a component's lead, its other lead elsewhere; `free`: the far end is not found;
   *  `gather`: goes into the plug's cable. */
  readonly kind: 'ground' | 'metal' | 'component' | 'free' | 'gather';
  /** The wires that the mark names, in order. */
  readonly wires: readonly Id[];
  readonly component?: Id;
  /** The component's other lead is on the metal. */
  readonly toMetal?: boolean;
  /** Where it goes, in words. */
  readonly words: string;
}

export interface Links {
  readonly lines: readonly Link[];
  readonly marks: readonly Mark[];
  /** Wires of which neither end is known. */
  readonly loose: readonly Id[];
  /** Components that are drawn within a mark of another part, and need no place of their own. */
  readonly absorbed: ReadonlySet<Id>;
}

const isPlug = (part: Part): boolean => part.kind === 'plug' || part.kind === 'jack';

/** As many wires between two plugs are drawn as one cable. */
const trunkAtLeast = 3;

interface Ends {
  readonly wire: Wire;
  readonly from: TerminalPlace | null;
  readonly to: TerminalPlace | null;
}

const endsOf = (wire: Wire, parts: PartMap): Ends => ({
  wire,
  from: wire.from.at ? resolveEnd(parts, wire.from.at) : null,
  to: wire.to.at ? resolveEnd(parts, wire.to.at) : null
});

const placeOf = ({ part, terminal }: TerminalPlace): { part: Id; terminal: Id } => ({
  part: part.id,
  terminal: terminal.id
});

/** Pairs of plugs that a whole cable runs between, by "part part". */
const findTrunks = (all: readonly Ends[]): ReadonlyMap<string, readonly Ends[]> => {
  const trunks = new Map<string, Ends[]>();
  for (const ends of all) {
    const { from, to } = ends;
    if (!from || !to || from.part.id === to.part.id) continue;
    if (!isPlug(from.part) || !isPlug(to.part)) continue;
    const pair = [from.part.id, to.part.id].sort().join(' ');
    trunks.set(pair, [...(trunks.get(pair) ?? []), ends]);
  }
  for (const [pair, members] of trunks) if (members.length < trunkAtLeast) trunks.delete(pair);
  return trunks;
};

class Collector {
  readonly lines: Link[] = [];
  readonly marks: Mark[] = [];
  readonly loose: Id[] = [];
  readonly absorbed = new Set<Id>();
  private readonly study: Study;
  private readonly metalWires = new Map<string, { place: TerminalPlace; wires: Id[] }>();

  constructor(study: Study) {
    this.study = study;
  }

  wire({ wire, from, to }: Ends): void {
    if (!from && !to) {
      this.loose.push(wire.id);
      return;
    }
    if (!from || !to) {
      const known = from ?? to;
      if (known) this.free(wire, known, from ? wire.to : wire.from);
      return;
    }
    if (isMetal(from.terminal) || isMetal(to.terminal)) {
      this.grounded(wire, from, wire.to);
      this.grounded(wire, to, wire.from);
      return;
    }
    const ends = { from: placeOf(from), to: placeOf(to) };
    this.lines.push({ id: `wire-${wire.id}`, kind: 'wire', ...ends, wires: [wire.id] });
  }

  private free(wire: Wire, known: TerminalPlace, unknown: Wire['to']): void {
    if (isMetal(known.terminal)) {
      this.noteMetal(known, wire.id);
      return;
    }
    const words = unknown.as ?? '';
    const id = `free-${wire.id}`;
    this.marks.push({ id, ...placeOf(known), kind: 'free', wires: [wire.id], words });
  }

  private grounded(wire: Wire, here: TerminalPlace, there: Wire['to']): void {
    if (isMetal(here.terminal)) {
      this.noteMetal(here, wire.id);
      return;
    }
    this.marks.push({
      id: `ground-${wire.id}`,
      ...placeOf(here),
      kind: 'ground',
      wires: [wire.id],
      words: this.study.index.labelOf(there)
    });
  }

  private noteMetal(place: TerminalPlace, wire: Id): void {
    const key = `${place.part.id}/${place.terminal.id}`;
    const known = this.metalWires.get(key);
    if (known) known.wires.push(wire);
    else this.metalWires.set(key, { place, wires: [wire] });
  }

  /** Every metal terminal has its mark, wires or none. */
  metal(parts: PartMap): void {
    for (const part of parts.values()) {
      for (const terminal of Object.values(part.terminals)) {
        const wires = this.metalWires.get(`${part.id}/${terminal.id}`)?.wires ?? [];
        if (!isMetal(terminal) || (terminal.on && wires.length === 0)) continue;
        const id = `metal-${part.id}-${terminal.id}`;
        const at = { part: part.id, terminal: terminal.id };
        this.marks.push({ id, ...at, kind: 'metal', wires, words: '' });
      }
    }
  }

  trunk(members: readonly Ends[]): void {
    const [first] = members;
    if (!first?.from || !first.to) return;
    const [from, to] = [first.from.part.id, first.to.part.id];
    this.lines.push({
      id: `trunk-${from}-${to}`,
      kind: 'trunk',
      from: { part: from, terminal: null },
      to: { part: to, terminal: null },
      wires: members.map(({ wire }) => wire.id)
    });
    for (const { wire, from: a, to: b } of members) {
      [a, b].forEach((place, end) => {
        if (!place) return;
        const id = `gather-${wire.id}-${end}`;
        this.marks.push({ id, ...placeOf(place), kind: 'gather', wires: [wire.id], words: '' });
      });
    }
  }

  mates(part: Part, mate: Part): void {
    this.lines.push({
      id: `mates-${part.id}`,
      kind: 'mates',
      from: { part: part.id, terminal: null },
      to: { part: mate.id, terminal: null },
      wires: []
    });
  }

  /** A component between terminals of others: a mark at each of them that says where it goes. */
  component(part: Part, leads: readonly Lead[]): void {
    this.absorbed.add(part.id);
    leads.forEach(({ host }, index) => {
      if (!host || isMetal(host.terminal)) return;
      const far = leads[1 - index]?.host;
      this.marks.push({
        id: `component-${part.id}-${index}`,
        ...placeOf(host),
        kind: 'component',
        wires: [],
        component: part.id,
        toMetal: far ? isMetal(far.terminal) : false,
        words: far ? terminalLabel(far.part, far.terminal) : ''
      });
    });
  }

  /** The leads of a part that are soldered to other parts, each drawn as a line. */
  leads(part: Part, leads: readonly Lead[]): void {
    for (const { terminal, host } of leads) {
      if (!host || host.part.id === part.id) continue;
      const from = { part: part.id, terminal: terminal.id };
      const id = `lead-${part.id}-${terminal.id}`;
      if (isMetal(host.terminal)) {
        const words = terminalLabel(host.part, host.terminal);
        this.marks.push({ id, ...from, kind: 'ground', wires: [], words });
      } else this.lines.push({ id, kind: 'lead', from, to: placeOf(host), wires: [] });
    }
  }
}

interface Lead {
  readonly terminal: Terminal;
  readonly host: TerminalPlace | null;
}

/** The terminal that a lead ends at, through the leads of others that are soldered to the same. */
const findHost = (parts: PartMap, terminal: Terminal): TerminalPlace | null => {
  let host = terminal.on ? resolveEnd(parts, terminal.on) : null;
  for (let step = 0; host?.terminal.on && step < 20; step++) {
    const next = resolveEnd(parts, host.terminal.on);
    if (!next) break;
    host = next;
  }
  return host;
};

const leadsOf = (parts: PartMap, part: Part): Lead[] =>
  sortByOrder(part.terminals).map((terminal) => ({ terminal, host: findHost(parts, terminal) }));

/** Everything that the diagram shows between the terminals of a chassis. */
export const buildLinks = (study: Study, parts: PartMap): Links => {
  const collect = new Collector(study);
  const all = study.index.wires.map((wire) => endsOf(wire, parts));
  const trunks = findTrunks(all);
  const inTrunk = new Set([...trunks.values()].flat().map(({ wire }) => wire.id));
  const touched = new Set(
    all.flatMap(({ from, to }) => [from, to].map((place) => place?.terminal ?? null))
  );
  for (const ends of all) if (!inTrunk.has(ends.wire.id)) collect.wire(ends);
  for (const members of trunks.values()) collect.trunk(members);
  const allLeads = new Map([...parts.values()].map((part) => [part, leadsOf(parts, part)]));
  const hosts = new Set([...allLeads.values()].flat().map(({ host }) => host?.terminal ?? null));
  for (const [part, leads] of allLeads) {
    const isHung =
      isTwoLead(part.kind, leads.length) &&
      leads.every(({ host }) => host && host.part.id !== part.id) &&
      !leads.some(({ terminal }) => touched.has(terminal) || hosts.has(terminal));
    if (isHung) collect.component(part, leads);
    else collect.leads(part, leads);
  }
  collectMates(collect, parts);
  collect.metal(parts);
  return {
    lines: collect.lines,
    marks: collect.marks,
    loose: collect.loose,
    absorbed: collect.absorbed
  };
};

const collectMates = (collect: Collector, parts: PartMap): void => {
  const mated = new Set<Id>();
  for (const part of parts.values()) {
    const mate = part.mates === undefined ? undefined : parts.get(part.mates);
    if (!mate || mate.id === part.id || !isPlug(part) || !isPlug(mate)) continue;
    if (mated.has(mate.id) || mated.has(part.id)) continue;
    mated.add(part.id).add(mate.id);
    collect.mates(part, mate);
  }
};
