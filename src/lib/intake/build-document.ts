// From the drafts of a list's wires to a document: units, parts with their terminals, cables, wires.
import {
  documentFormat,
  documentVersion,
  emptyRecords,
  ordersBetween,
  type Cable,
  type ChassisDocument,
  type MakeId,
  type Part,
  type Unit,
  type Wire
} from '#document/index.ts';
import { findTubeBase, findTubeType, parseColour } from '#handbook/index.ts';
import { buildPart, pinsBeyondBase, type BuiltPart } from './build-part.ts';
import { buildWire } from './build-wire.ts';
import { addToCable, describeCable, type CableDraft } from './cable-drafts.ts';
import type { TellNote } from './notes.ts';
import { PartDrafts, type EndDraft, type PartDraft } from './part-drafts.ts';
import { looksLikeTubeType } from './read-end.ts';
import { takeMates } from './take-mates.ts';
import { chooseUnits, findScopes, unitVotesOf } from './unit-choice.ts';
import type { EndFields, WireDraft } from './wire-draft.ts';

export interface DocumentPlan {
  readonly title: string;
  readonly notes: string;
  readonly wires: readonly WireDraft[];
}

interface PlacedWire {
  readonly draft: WireDraft;
  readonly from: EndDraft | null;
  readonly to: EndDraft | null;
  readonly cableKey: string | null;
}

/** Builds the document. Everything that a wire names comes to stand in it. */
export const buildListDocument = (
  { title, notes, wires }: DocumentPlan,
  makeId: MakeId,
  tell: TellNote
): ChassisDocument => {
  const parts = new PartDrafts();
  const cables = new Map<string, CableDraft>();
  const scopeOf = findScopes(wires);
  const placed = wires.map((draft): PlacedWire => {
    const place = (end: EndFields): EndDraft | null =>
      end.end.kind === 'unknown' ? null : parts.endAt(end.end, draft.row, scopeOf(end));
    const from = place(draft.from);
    const to = place(draft.to);
    const cableKey = draft.cable === null ? null : addToCable(cables, draft.cable, draft);
    return { draft, from, to, cableKey };
  });
  placed.forEach((wire) => takeTypes(wire, tell));
  placed.forEach(voteForUnits);
  tellSharedLeads(placed, tell);

  const drafts = [...parts.byKey.values()];
  drafts.forEach((part) => tellPart(part, tell));
  const { units, unitOf } = chooseUnits(drafts, makeId);
  const isWired = (a: PartDraft, b: PartDraft): boolean =>
    placed.some(
      ({ from, to }) => (from?.part === a && to?.part === b) || (from?.part === b && to?.part === a)
    );
  const built = takeMates(buildParts(drafts, unitOf, makeId), isWired, tell);
  const builtCables = buildCables(cables, makeId);
  const orders = ordersBetween(null, null, placed.length);
  const wireRecord: Record<string, Wire> = {};
  placed.forEach(({ draft, from, to, cableKey }, index) => {
    const wire = buildWire(draft, {
      id: makeId('wire'),
      order: orders[index] ?? 'a0',
      from: from && refOf(built, from),
      to: to && refOf(built, to),
      cable: cableKey === null ? null : (builtCables.get(cableKey) ?? null)
    });
    wireRecord[wire.id] = wire;
  });
  return {
    format: documentFormat,
    version: documentVersion,
    id: makeId('document'),
    lineage: [],
    identity: { title, ...(notes === '' ? {} : { notes }) },
    policy: {},
    ...emptyRecords(),
    units: byId(units),
    parts: byId([...built.values()].map(({ part }) => part)),
    wires: wireRecord,
    cables: byId([...builtCables.values()])
  };
};

const byId = <T extends { readonly id: string }>(elements: readonly T[]): Record<string, T> =>
  Object.fromEntries(elements.map((element) => [element.id, element]));

const refOf = (
  built: ReadonlyMap<PartDraft, BuiltPart>,
  end: EndDraft
): { readonly part: string; readonly terminal: string } | null => {
  const part = built.get(end.part);
  const terminal = 'terminal' in end ? part?.idOf.get(end.terminal) : part?.bareIds[end.bare - 1];
  return part && terminal !== undefined ? { part: part.part.id, terminal } : null;
};

/** A transformer's lead is told by its colour, and two of its leads may be of one colour: two wires
 *  on "T1 yellow" are taken for one lead, which is told, since it may be a winding shorted on paper. */
const tellSharedLeads = (placed: readonly PlacedWire[], tell: TellNote): void => {
  const leads = new Map<string, { readonly label: string; readonly rows: number[] }>();
  for (const { draft, from, to } of placed)
    for (const end of [from, to]) {
      if (!end || !('terminal' in end) || end.part.kind !== 'transformer') continue;
      if (!parseColour(end.terminal)) continue;
      const label = `${end.part.reference} ${end.terminal}`;
      const lead = leads.get(label) ?? { label, rows: [] };
      lead.rows.push(draft.row);
      leads.set(label, lead);
    }
  for (const { label, rows } of leads.values())
    if (rows.length > 1)
      tell(
        'reading',
        { row: rows[1] ?? 0 },
        `${label} stands in rows ${rows.join(' and ')}: taken for one lead; if there are two, call them "${label} 1" and "${label} 2"`
      );
};

/** Types from brackets and from the columns of the two ends; a single "Type" column belongs to the
 *  only end that is a tube. */
const takeTypes = ({ draft, from, to }: PlacedWire, tell: TellNote): void => {
  const set = (end: EndDraft | null, type: string | null): void => {
    if (!end || type === null || PartDrafts.setType(end.part, type)) return;
    const words = `${end.part.reference} is given as ${type} here and as ${end.part.type} before: ${end.part.type} is kept, ${type} is in the notes`;
    draft.notes.push(`${end.part.reference}: ${type}`);
    tell('reading', { row: draft.row }, words);
  };
  const typeIn = ({ end }: EndFields): string | null => (end.kind === 'terminal' ? end.type : null);
  set(from, typeIn(draft.from) ?? draft.from.type);
  set(to, typeIn(draft.to) ?? draft.to.type);
  if (!draft.endType) return;
  const { text, column } = draft.endType;
  const tubes = [from, to].filter((end) => end !== null && /tube$/.test(end.part.kind));
  const distinct = [...new Set(tubes.map((end) => end?.part))];
  const same = distinct.find((part) => part?.type?.toLowerCase() === text.toLowerCase());
  const open = distinct.filter((part) => part?.type == null);
  const chosen = same ?? (open.length === 1 ? open[0] : undefined);
  const end = tubes.find((tube) => tube?.part === chosen);
  if (chosen && end) {
    set(end, text);
    return;
  }
  draft.notes.push(`${column}: ${text}`);
  const why =
    distinct.length === 0 ? 'neither end is a tube' : 'it does not say which end it means';
  tell(
    'reading',
    { row: draft.row, column, cell: text },
    `was given to no part: ${why}; it is kept in the notes`
  );
};

const voteForUnits = ({ draft, from, to }: PlacedWire): void => {
  unitVotesOf(draft).forEach(({ side, unit, weight }) => {
    const end = side === 'from' ? from : to;
    if (!end) return;
    const votes = end.part.unitVotes;
    votes.set(unit, (votes.get(unit) ?? 0) + weight);
  });
};

const tellPart = (part: PartDraft, tell: TellNote): void => {
  const { reference, type } = part;
  const row = part.firstRow;
  if (part.bare > 1 || (part.bare === 1 && part.terminals.size > 0)) {
    const words = `${reference} stands without a terminal at ${part.bare} wire ${part.bare === 1 ? 'end' : 'ends'}: each got a terminal of its own, named with "?"`;
    tell('reading', { row }, words);
  }
  if (type !== null && !findTubeType(type) && !findTubeBase(type) && looksLikeTubeType(type)) {
    tell(
      'reading',
      { row },
      `${reference}: the handbook has no ${type}; its base and heater are not known here`
    );
  }
  if (reference === type) {
    const words = `${reference} names a tube by its type: if the set has two of them, their wires are now at one`;
    tell('reading', { row }, words);
  }
  const beyond = pinsBeyondBase(part);
  if (beyond.length > 0) {
    const words = `${reference} is a ${type}, whose base has no pin ${beyond.join(', ')}; the wires are kept as written`;
    tell('reading', { row }, words);
  }
};

/** What a point of the metal is called that the list does not name. */
export const lugName = (number: number): string => `chassis ${number}`;

/** True for a point of the metal that got its name here. */
export const isUnnamedLug = ({ kind, reference }: Pick<Part, 'kind' | 'reference'>): boolean =>
  kind === 'ground lug' && /^chassis \d+$/.test(reference);

const buildParts = (
  drafts: readonly PartDraft[],
  unitOf: (draft: PartDraft) => Unit,
  makeId: MakeId
): Map<PartDraft, BuiltPart> => {
  const orders = ordersBetween(null, null, drafts.length);
  const taken = new Set(drafts.map(({ reference }) => reference.toLowerCase()));
  let lugs = 0;
  const nextLug = (): string => {
    do lugs += 1;
    while (taken.has(lugName(lugs)));
    return lugName(lugs);
  };
  return new Map(
    drafts.map((draft, index) => {
      const reference = draft.reference.startsWith('\u0000') ? nextLug() : draft.reference;
      const place = { unit: unitOf(draft).id, order: orders[index] ?? 'a0', reference };
      return [draft, buildPart(draft, place, makeId)];
    })
  );
};

const buildCables = (
  cables: ReadonlyMap<string, CableDraft>,
  makeId: MakeId
): Map<string, Cable> => {
  const orders = ordersBetween(null, null, cables.size);
  return new Map(
    [...cables].map(([key, draft], index) => {
      const id = makeId('cable');
      return [key, { id, order: orders[index] ?? 'a0', name: draft.name, ...describeCable(draft) }];
    })
  );
};
