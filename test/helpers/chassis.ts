// A chassis in one screen, for tests and demonstrations: parts and wires are named as people name
// them ("V1-5", "T1 red"), ids and order keys follow from the names, so two runs give equal bytes.
import {
  documentFormat,
  documentSchema,
  documentVersion,
  emptyRecords,
  type Cable,
  type ChassisDocument,
  type Identity,
  type Part,
  type PartKind,
  type Policy,
  type Stock,
  type Support,
  type Terminal,
  type TerminalRef,
  type Unit,
  type Wire
} from '#document/index.ts';
import { generateKeyBetween } from 'fractional-indexing';
import { elementsOf, idFrom, point, present, tubeTerminalsOf } from './chassis-fields.ts';
import type {
  ElementSpec,
  End,
  PartOptions,
  TerminalSpec,
  WireOptions
} from './chassis-options.ts';
import { rowOffsets, toFarads, toOhms, type Spot } from './chassis-places.ts';

export class ChassisBuilder {
  private readonly units: Record<string, Unit> = {};
  private readonly parts: Record<string, Part> = {};
  private readonly wires: Record<string, Wire> = {};
  private readonly cables: Record<string, Cable> = {};
  private readonly supports: Record<string, Support> = {};
  private readonly shelf: Record<string, Stock> = {};
  private readonly pending: (() => void)[] = [];
  private lastOrder: string | null = null;
  private currentUnit: string | undefined;

  private readonly identity: Identity;
  private readonly policy: Partial<Policy>;

  constructor(identity: Identity, policy: Partial<Policy>) {
    this.identity = identity;
    this.policy = policy;
  }

  /** A unit; the parts and supports that follow belong to it. */
  unit(
    name: string,
    more: {
      metal?: Unit['metal'];
      size?: Spot;
      place?: Spot;
      notes?: string;
    } = {}
  ): this {
    const id = idFrom('u', name, this.units);
    this.units[id] = present<Unit>({
      id,
      order: this.nextOrder(),
      name,
      metal: more.metal ?? 'bonded',
      size: more.size && { width: more.size[0], height: more.size[1] },
      place: more.place && point(more.place),
      notes: more.notes
    });
    this.currentUnit = id;
    return this;
  }

  /** Go back to a unit that was named before. */
  in(unitName: string): this {
    this.currentUnit = this.unitIdOf(unitName);
    return this;
  }

  /** Any part: its terminals by name, in order. */
  part(
    kind: PartKind,
    reference: string,
    terminals: readonly (string | TerminalSpec)[],
    more: PartOptions = {}
  ): this {
    const id = idFrom('p', reference, this.parts);
    const own: Record<string, Terminal> = {};
    let order: string | null = null;
    for (const given of terminals) {
      const spec = typeof given === 'string' ? { name: given } : given;
      order = generateKeyBetween(order, null);
      const terminalId = idFrom('t', spec.name, own);
      const terminal = present<Terminal>({
        id: terminalId,
        order,
        name: spec.name,
        offset: spec.offset && point(spec.offset),
        heightMm: spec.heightMm,
        ending: spec.ending,
        grounded: spec.grounded,
        leadsCounted: spec.leadsCounted
      });
      own[terminalId] = terminal;
      if (spec.on !== undefined) this.later(() => (terminal.on = this.terminalAt(spec.on ?? '')));
    }
    const part = present<Part>({
      id,
      order: this.nextOrder(),
      unit: more.unit === undefined ? this.unitNow() : this.unitIdOf(more.unit),
      kind,
      reference,
      type: more.type,
      value: more.value,
      function: more.function,
      place:
        more.at &&
        present({
          ...point(more.at),
          rotation: more.rotation,
          face: more.face,
          by: 'hand' as const
        }),
      terminals: own,
      elements: more.elements && elementsOf(reference, own, more.elements),
      notes: more.notes
    });
    this.parts[id] = part;
    const mate = more.mates;
    if (mate !== undefined) this.later(() => (part.mates = this.partOf(mate).id));
    return this;
  }

  /** A tube in its socket: its pins as the handbook has them, then its cap. */
  tube(
    reference: string,
    type: string,
    more: PartOptions & {
      /** How many pins the socket has, for a type that the handbook does not know. */
      pins?: number;
      /** Pins that are bent to the saddle of the socket. */
      grounded?: readonly string[];
      cap?: { name: string; offset?: Spot };
    } = {}
  ): this {
    const { pins, grounded, cap, ...rest } = more;
    const kind = /P4/.test(type) ? 'picture tube' : 'tube';
    const terminals = tubeTerminalsOf(type, { pins, grounded, cap });
    return this.part(kind, reference, terminals, { type, ...rest });
  }

  /** A terminal strip with its lugs numbered from 1 in a row. */
  strip(
    reference: string,
    lugs: number,
    more: PartOptions & { grounded?: readonly number[]; pitchMm?: number } = {}
  ): this {
    const terminals = rowOffsets(lugs, more.pitchMm ?? 9.5).map((offset, index) =>
      present<TerminalSpec>({
        name: String(index + 1),
        offset,
        ending: 'solder lug',
        grounded: more.grounded?.includes(index + 1) === true ? true : undefined
      })
    );
    return this.part('terminal strip', reference, terminals, more);
  }

  /** One lug on the unit's metal; an end names it by its reference alone. */
  ground(reference: string, more: PartOptions = {}): this {
    return this.part(
      'ground lug',
      reference,
      [{ name: '1', offset: [0, 0], ending: 'solder lug', grounded: true }],
      more
    );
  }

  /** A resistor whose leads are soldered to two terminals (null: free). */
  resistor(
    reference: string,
    value: string,
    from: End,
    to: End,
    more: PartOptions & { watts?: number } = {}
  ): this {
    const element = present<ElementSpec>({
      kind: 'resistor',
      from: 'A',
      to: 'B',
      ohms: toOhms(value),
      watts: more.watts
    });
    return this.twoLeads('resistor', reference, value, from, to, element, more);
  }

  /** A capacitor whose leads are soldered to two terminals (null: free). */
  capacitor(
    reference: string,
    value: string,
    from: End,
    to: End,
    more: PartOptions & { ratedV?: number } = {}
  ): this {
    const element = present<ElementSpec>({
      kind: 'capacitor',
      from: 'A',
      to: 'B',
      farads: toFarads(value),
      ratedV: more.ratedV
    });
    return this.twoLeads('capacitor', reference, value, from, to, element, more);
  }

  /** A wire between two terminals. */
  wire(number: string | number, from: End, to: End, more: WireOptions = {}): this {
    const id = idFrom('w', String(number), this.wires);
    const wire = present<Wire>({
      id,
      order: this.nextOrder(),
      number: String(number),
      from: { known: from === null ? 'unknown' : 'seen', ...more.fromEnd },
      to: { known: to === null ? 'unknown' : 'seen', ...more.toEnd },
      construction: more.construction ?? 'hook-up wire',
      function: more.function,
      conductor: more.conductor,
      carries: present({
        dcV: more.dcV,
        acV: more.acV,
        pulseV: more.pulseV,
        amps: more.amps
      }),
      origin: more.origin,
      found: present({
        awg: more.awg,
        colour: more.colour,
        tracer: more.tracer,
        insulation: more.insulation,
        ratingV: more.ratingV,
        ratingKind: more.ratingKind,
        condition: more.condition,
        ...more.found
      }),
      serviceData: more.serviceData,
      planned: more.planned ?? {},
      outsideMm: more.outsideMm,
      tapedMm: more.tapedMm,
      critical: more.critical,
      dress: more.dress,
      isPart: more.isPart,
      state: more.state ?? 'found',
      notes: more.notes
    });
    this.wires[id] = wire;
    this.later(() => {
      if (from !== null) wire.from.at = this.terminalAt(from);
      if (to !== null) wire.to.at = this.terminalAt(to);
      if (more.cable !== undefined) wire.cable = this.namedIn(this.cables, more.cable, 'cable');
      if (more.route !== undefined) {
        wire.route = { supports: more.route.map((name) => this.supportId(name)), by: 'hand' };
      }
    });
    return this;
  }

  cable(name: string, kind: string, more: Partial<Omit<Cable, 'id' | 'order'>> = {}): this {
    const id = idFrom('c', name, this.cables);
    this.cables[id] = { id, order: this.nextOrder(), name, kind, ...more };
    return this;
  }

  support(
    name: string,
    kind: Support['kind'],
    at: Spot,
    more: { boreMm?: number; heightMm?: number } = {}
  ): this {
    const id = idFrom('s', name, this.supports);
    this.supports[id] = {
      id,
      order: this.nextOrder(),
      unit: this.unitNow(),
      name,
      kind,
      place: point(at),
      ...more
    };
    return this;
  }

  /** A piece of wire on the shelf: a spool where nothing else is said. */
  stock(
    name: string,
    lengthMm: number,
    more: Partial<Omit<Stock, 'id' | 'order' | 'name' | 'lengthMm'>> = {}
  ): this {
    const id = idFrom('k', name, this.shelf);
    this.shelf[id] = { id, order: this.nextOrder(), name, kind: 'spool', lengthMm, ...more };
    return this;
  }

  /** The document, parsed by the schema; throws where an end names something that is not there. */
  build(): ChassisDocument {
    for (const settle of this.pending.splice(0)) settle();
    return documentSchema.parse({
      format: documentFormat,
      version: documentVersion,
      id: idFrom('d', this.identity.title, {}),
      lineage: [],
      identity: this.identity,
      policy: this.policy,
      ...emptyRecords(),
      units: this.units,
      parts: this.parts,
      wires: this.wires,
      cables: this.cables,
      supports: this.supports,
      shelf: this.shelf
    });
  }

  private twoLeads(
    kind: PartKind,
    reference: string,
    value: string,
    from: End,
    to: End,
    element: ElementSpec,
    more: PartOptions
  ): this {
    const lead = (name: string, on: End): TerminalSpec =>
      present({ name, ending: 'lead', on: on ?? undefined });
    return this.part(kind, reference, [lead('A', from), lead('B', to)], {
      value,
      ...more,
      elements: [element, ...(more.elements ?? [])]
    });
  }

  /** References are settled at the end, so that things may be named before they are made. */
  private later(settle: () => void): void {
    this.pending.push(settle);
  }

  private nextOrder(): string {
    this.lastOrder = generateKeyBetween(this.lastOrder, null);
    return this.lastOrder;
  }

  private unitNow(): string {
    if (this.currentUnit === undefined) this.unit('Main chassis');
    return this.currentUnit as string;
  }

  private unitIdOf(name: string): string {
    return this.namedIn(this.units, name, 'unit');
  }

  private namedIn(
    record: Record<string, { id: string; name: string }>,
    name: string,
    what: string
  ) {
    const match = Object.values(record).find((element) => element.name === name);
    if (!match) throw new Error(`no ${what} is called "${name}"`);
    return match.id;
  }

  private supportId(name: string): string {
    const [unitName, own] = name.includes('/') ? name.split('/') : [undefined, name];
    const match = Object.values(this.supports).find(
      (support) =>
        support.name === own && (!unitName || this.units[support.unit]?.name === unitName)
    );
    if (!match) throw new Error(`no support is called "${name}"`);
    return match.id;
  }

  private partOf(reference: string): Part {
    const match = Object.values(this.parts).find((part) => part.reference === reference);
    if (!match) throw new Error(`no part is called "${reference}"`);
    return match;
  }

  private terminalAt(end: string): TerminalRef {
    const candidates = Object.values(this.parts)
      .filter((part) => end === part.reference || /^[-: ]/.test(end.slice(part.reference.length)))
      .filter((part) => end.startsWith(part.reference))
      .sort((a, b) => b.reference.length - a.reference.length);
    for (const part of candidates) {
      const terminals = Object.values(part.terminals);
      const name = end.slice(part.reference.length + 1);
      const match = name
        ? terminals.find((terminal) => terminal.name === name)
        : terminals.length === 1
          ? terminals[0]
          : undefined;
      if (match) return { part: part.id, terminal: match.id };
    }
    throw new Error(`no terminal is called "${end}"`);
  }
}

/** A new chassis: its title, or its whole identity; policy fields that differ from the defaults. */
export const chassis = (
  identity: string | Identity = 'Bench set',
  policy: Partial<Policy> = {}
): ChassisBuilder =>
  new ChassisBuilder(typeof identity === 'string' ? { title: identity } : identity, policy);
