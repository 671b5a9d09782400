// Where the wires of a second list end in the chassis that is open: its units, parts, terminals and cables
// are found there by name; what is not there comes along, and each such thing knows which wires need it.
import {
  ordersBetween,
  sortByOrder,
  type Cable,
  type ChassisDocument,
  type Edit,
  type Part,
  type Terminal,
  type TerminalRef,
  type Unit
} from '#document/index.ts';
import { addElement, changeElement, type Changes } from '#document/edits.ts';
import { isUnnamedLug, lugName } from './build-document.ts';
import { mainUnitName } from './unit-choice.ts';

/** Something that has to be added before a wire can be. */
export interface Needed {
  readonly edit: Edit;
  /** What is added, for a person: "V5", "TS2-4", "cable W3". */
  readonly name: string;
  readonly kind: 'unit' | 'part' | 'terminal' | 'cable';
  /** Ids of the wires that end there. */
  readonly wires: Set<string>;
}

const keyOf = (name: string): string => name.trim().toLowerCase().replace(/\s+/g, ' ');

/** A terminal of a part that nobody named. */
export const isBare = ({ name }: Pick<Terminal, 'name'>): boolean => /^\?\d+$/.test(name);

export class MergePlaces {
  readonly needed: Needed[] = [];
  readonly notes: string[] = [];
  readonly #open: ChassisDocument;
  readonly #list: ChassisDocument;
  readonly #unitIds = new Map<string, string>();
  readonly #parts = new Map<string, Part>();
  readonly #cableIds = new Map<string, string>();
  readonly #byElement = new Map<string, Needed>();
  readonly #taken: Set<string>;
  #lastPart: string | null;
  #lastCable: string | null;
  #lastUnit: string | null;

  constructor(open: ChassisDocument, list: ChassisDocument) {
    this.#open = open;
    this.#list = list;
    this.#taken = new Set(Object.values(open.parts).map(({ reference }) => keyOf(reference)));
    const lastOf = (elements: Readonly<Record<string, { id: string; order: string }>>) =>
      sortByOrder(elements).at(-1)?.order ?? null;
    this.#lastPart = lastOf(open.parts);
    this.#lastCable = lastOf(open.cables);
    this.#lastUnit = lastOf(open.units);
  }

  /** The terminal of the open chassis that stands for one of the list's. It is found by its names; where
   *  it is not there, it is put down as needed by the wire. */
  terminalFor(at: TerminalRef, wire: string): TerminalRef | null {
    const from = this.#list.parts[at.part];
    const terminal = from?.terminals[at.terminal];
    if (!from || !terminal) return null;
    const part = this.#partFor(from, wire);
    const isNew = part.id === from.id;
    if (isNew) return { part: part.id, terminal: terminal.id };
    const known = isBare(terminal)
      ? undefined
      : Object.values(part.terminals).find(({ name }) => keyOf(name) === keyOf(terminal.name));
    if (known) return { part: part.id, terminal: known.id };
    return { part: part.id, terminal: this.#addTerminal(part, terminal, wire) };
  }

  /** The part of the open chassis that one of the list's goes by, or null where it has none. */
  findPart(from: Part): Part | null {
    if (isUnnamedLug(from)) return null;
    const twins = Object.values(this.#open.parts).filter(
      ({ reference }) => keyOf(reference) === keyOf(from.reference)
    );
    const unit = this.#findUnit(from.unit);
    const here = twins.filter((part) => part.unit === unit);
    if (here[0]) return here[0];
    return this.#saysUnits() ? null : (twins[0] ?? null);
  }

  /** The cable by its name; needed by the wire where it is not there. */
  cableFor(id: string, wire: string): string | null {
    const cable = this.#list.cables[id];
    if (!cable) return null;
    const known =
      this.#cableIds.get(id) ??
      Object.values(this.#open.cables).find(({ name }) => keyOf(name) === keyOf(cable.name))?.id ??
      this.#addCable(cable);
    this.#cableIds.set(id, known);
    this.#byElement.get(known)?.wires.add(wire);
    return known;
  }

  #partFor(from: Part, wire: string): Part {
    const part = this.#parts.get(from.id) ?? this.findPart(from) ?? this.#addPart(from);
    if (!this.#parts.has(from.id)) this.#compareTypes(from, part);
    this.#parts.set(from.id, part);
    this.#byElement.get(part.id)?.wires.add(wire);
    this.#byElement.get(part.unit)?.wires.add(wire);
    return part;
  }

  #compareTypes(from: Part, part: Part): void {
    if (from.type === undefined || part.type === undefined) return;
    if (keyOf(from.type) === keyOf(part.type)) return;
    this.notes.push(
      `${part.reference} is a ${part.type} here and a ${from.type} in the list: it stays as it is`
    );
  }

  #addPart(from: Part): Part {
    this.#lastPart = ordersBetween(this.#lastPart, null, 1)[0] ?? 'a0';
    const reference = isUnnamedLug(from) ? this.#freeLug() : from.reference;
    this.#taken.add(keyOf(reference));
    // Its other half may be a part of the open chassis, and who mates with whom is said there.
    const { mates: _, ...plain } = from;
    const part: Part = {
      ...plain,
      reference,
      order: this.#lastPart,
      unit: this.#findUnit(from.unit) ?? this.#addUnit(from.unit)
    };
    this.#need(part.id, { edit: addElement('part', part), name: reference, kind: 'part' });
    return part;
  }

  #freeLug(): string {
    let number = 1;
    while (this.#taken.has(lugName(number))) number += 1;
    return lugName(number);
  }

  #addTerminal(part: Part, terminal: Terminal, wire: string): string {
    const known = this.#byElement.get(`${part.id}/${terminal.id}`);
    if (known) {
      known.wires.add(wire);
      return terminal.id;
    }
    const names = new Set(Object.values(part.terminals).map(({ name }) => name));
    let name = terminal.name;
    if (isBare(terminal)) for (let next = 1; names.has(name); next += 1) name = `?${next}`;
    const last = sortByOrder(part.terminals).at(-1)?.order ?? null;
    const added: Terminal = {
      ...terminal,
      name,
      order: ordersBetween(last, null, 1)[0] ?? terminal.order
    };
    this.#need(`${part.id}/${terminal.id}`, {
      edit: changeElement('part', part.id, {
        terminals: { [terminal.id]: added }
      } as Changes<Part>),
      name: `${part.reference}-${name}`,
      kind: 'terminal'
    });
    this.#byElement.get(`${part.id}/${terminal.id}`)?.wires.add(wire);
    return terminal.id;
  }

  #addCable(cable: Cable): string {
    this.#lastCable = ordersBetween(this.#lastCable, null, 1)[0] ?? 'a0';
    const added = { ...cable, order: this.#lastCable };
    this.#need(cable.id, {
      edit: addElement('cable', added),
      name: `cable ${cable.name}`,
      kind: 'cable'
    });
    return cable.id;
  }

  /** The list says in which unit each part stands. */
  #saysUnits(): boolean {
    const names = Object.values(this.#list.units).map(({ name }) => name);
    return names.length > 1 || names[0] !== mainUnitName;
  }

  #findUnit(id: string): string | null {
    const known = this.#unitIds.get(id);
    if (known !== undefined) return known;
    const unit = this.#list.units[id];
    const units = sortByOrder(this.#open.units);
    const twin = units.find(({ name }) => keyOf(name) === keyOf(unit?.name ?? ''));
    return twin?.id ?? (this.#saysUnits() ? null : (units[0]?.id ?? null));
  }

  #addUnit(id: string): string {
    const unit: Unit | undefined = this.#list.units[id];
    if (!unit) throw new RangeError(`the list has no unit ${id}`);
    this.#lastUnit = ordersBetween(this.#lastUnit, null, 1)[0] ?? 'a0';
    const edit = addElement('unit', { ...unit, order: this.#lastUnit });
    this.#unitIds.set(id, id);
    this.#need(id, { edit, name: unit.name, kind: 'unit' });
    return id;
  }

  #need(key: string, { edit, name, kind }: Omit<Needed, 'wires'>): void {
    const needed: Needed = { edit, name, kind, wires: new Set() };
    this.#byElement.set(key, needed);
    this.needed.push(needed);
  }
}
