// A document while an edit works on it: reads are cheap, since what was not touched is read from the
// document itself and not through mutative's draft; what was touched is known, to be validated after.
import { collections, type ElementName, type SectionName } from './edit.ts';
import type { Part, Unit } from './part-schema.ts';
import type { JsonRecord } from './plain-json.ts';
import type { Id } from './primitives.ts';
import type { ChassisDocument } from './schema.ts';
import type { Photo } from './photo-schema.ts';
import type { Callout, Pattern, Stock } from './shelf-schema.ts';
import type { Cable, Support, Wire } from './wire-schema.ts';

export interface ElementOf {
  readonly unit: Unit;
  readonly part: Part;
  readonly wire: Wire;
  readonly cable: Cable;
  readonly support: Support;
  readonly photo: Photo;
  readonly pattern: Pattern;
  readonly callout: Callout;
  readonly stock: Stock;
}

const recordOfKind = <K extends ElementName>(
  document: ChassisDocument,
  kind: K
): Record<Id, ElementOf[K]> => document[collections[kind]] as Record<Id, ElementOf[K]>;

export class WorkingCopy {
  private readonly base: ChassisDocument;
  private readonly draft: ChassisDocument;
  /** By kind: the elements that were added, changed or removed. */
  readonly touched: Record<ElementName, Set<Id>> = {
    unit: new Set(),
    part: new Set(),
    wire: new Set(),
    cable: new Set(),
    support: new Set(),
    photo: new Set(),
    pattern: new Set(),
    callout: new Set(),
    stock: new Set()
  };
  /** The sections that were changed. */
  readonly touchedSections = new Set<SectionName>();

  /** @param draft mutative's draft of `base`. */
  constructor(base: ChassisDocument, draft: ChassisDocument) {
    this.base = base;
    this.draft = draft;
  }

  has(kind: ElementName, id: Id): boolean {
    return Object.hasOwn(recordOfKind(this.draft, kind), id);
  }

  /** All elements of a kind as they are now, to be read only. */
  *elements<K extends ElementName>(kind: K): Iterable<ElementOf[K]> {
    const before = recordOfKind(this.base, kind);
    const now = this.touched[kind].size === 0 ? before : recordOfKind(this.draft, kind);
    for (const id of Object.keys(now)) {
      const element = this.touched[kind].has(id) ? now[id] : before[id];
      if (element) yield element;
    }
  }

  add<K extends ElementName>(kind: K, element: ElementOf[K]): void {
    recordOfKind(this.draft, kind)[element.id] = element;
    this.touched[kind].add(element.id);
  }

  /** The element to be changed in place. It must exist. */
  change<K extends ElementName>(kind: K, id: Id): ElementOf[K] {
    this.touched[kind].add(id);
    const element = recordOfKind(this.draft, kind)[id];
    if (!element) throw new RangeError(`there is no ${kind} ${id}`);
    return element;
  }

  remove(kind: ElementName, id: Id): void {
    this.touched[kind].add(id);
    Reflect.deleteProperty(recordOfKind(this.draft, kind), id);
  }

  /** The section to be changed in place; made where the document had none. */
  section(name: SectionName): JsonRecord {
    this.touchedSections.add(name);
    if (name === 'proof') this.draft.proof ??= {};
    return this.draft[name] as JsonRecord;
  }
}
