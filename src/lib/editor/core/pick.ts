// What is picked: one thing, the same in the schedule, on the sheet, in the margin and on the tag.
// Also what belongs to it: the wires and terminals that light up with it.
import type { FindingPlace } from '#checks/index.ts';
import type { Subject } from '#drawing/display-list.ts';
import type { Study } from '#study/index.ts';
import { keyOfRef } from '#study/terminal-key.ts';
import type { Wire } from '#document/index.ts';

export type Pick =
  | { readonly kind: 'wire'; readonly id: string }
  | { readonly kind: 'part'; readonly id: string }
  /** `id` is the terminal's key, as the study makes it. */
  | { readonly kind: 'terminal'; readonly id: string };

export interface Lit {
  readonly wires: ReadonlySet<string>;
  readonly parts: ReadonlySet<string>;
  readonly terminals: ReadonlySet<string>;
}

export const isSamePick = (a: Pick | null, b: Pick | null): boolean =>
  a?.kind === b?.kind && a?.id === b?.id;

/** The pick, if what it names is still in the document. */
export const stillThere = (pick: Pick | null, study: Study): Pick | null => {
  if (pick === null) return null;
  const there =
    pick.kind === 'wire'
      ? study.wires.has(pick.id)
      : pick.kind === 'part'
        ? study.index.partById.has(pick.id)
        : study.index.terminalByKey.has(pick.id);
  return there ? pick : null;
};

/** What a finding's place picks: a net its first wire, or null where there is nothing to show. */
export const pickOfPlace = (place: FindingPlace, study: Study): Pick | null => {
  switch (place.kind) {
    case 'wire':
    case 'part':
    case 'terminal':
      return stillThere({ kind: place.kind, id: place.id }, study);
    case 'net': {
      const wire = study.nets.get(place.id)?.wires[0];
      return wire === undefined ? null : { kind: 'wire', id: wire };
    }
    case 'cable': {
      const wire = study.index.wires.find(({ cable }) => cable === place.id);
      return wire === undefined ? null : { kind: 'wire', id: wire.id };
    }
    case 'unit': {
      const part = study.index.parts.find(({ unit }) => unit === place.id);
      return part === undefined ? null : { kind: 'part', id: part.id };
    }
    case 'document':
      return null;
  }
};

/** What a press on a drawn thing picks, or null for what cannot be picked. */
export const pickOfSubject = (subject: Subject, study: Study): Pick | null =>
  subject.kind === 'support' ||
  subject.kind === 'finding' ||
  subject.kind === 'unit' ||
  subject.kind === 'photo'
    ? null
    : pickOfPlace({ kind: subject.kind, id: subject.id, label: '' }, study);

/** Where a finding is first of all: the first of its places that can be picked. */
export const pickOfPlaces = (places: readonly FindingPlace[], study: Study): Pick | null => {
  for (const place of places) {
    const pick = pickOfPlace(place, study);
    if (pick !== null) return pick;
  }
  return null;
};

/** Keys of the terminals that a wire ends at. */
export const endKeysOf = (wire: Wire): string[] =>
  [wire.from, wire.to].flatMap((end) => (end.at === undefined ? [] : [keyOfRef(end.at)]));

/** The wires that belong to a pick: a wire's own net, a part's leads, all that meets at a terminal. */
const wiresOf = (pick: Pick, study: Study): readonly string[] => {
  if (pick.kind === 'part') {
    const terminals = study.index.terminalsOf.get(pick.id) ?? [];
    return terminals.flatMap(({ id }) =>
      (study.index.wiresAt.get(`${pick.id}/${id}`) ?? []).map((wire) => wire.id)
    );
  }
  const netId = pick.kind === 'wire' ? study.wires.get(pick.id)?.net : study.netOf.get(pick.id);
  const net = netId === null || netId === undefined ? undefined : study.nets.get(netId);
  // Chassis is joined to half the set: to light it all would light nothing.
  if (net === undefined || net.isChassis) {
    return pick.kind === 'wire'
      ? [pick.id]
      : (study.index.wiresAt.get(pick.id) ?? []).map((wire) => wire.id);
  }
  return net.wires;
};

/** Everything that stands out while `pick` is picked. */
export const litBy = (pick: Pick, study: Study): Lit => {
  const wires = new Set(wiresOf(pick, study));
  if (pick.kind === 'wire') wires.add(pick.id);
  const terminals = new Set<string>();
  const parts = new Set<string>();
  if (pick.kind === 'terminal') terminals.add(pick.id);
  if (pick.kind === 'part') parts.add(pick.id);
  for (const wire of study.index.wires) {
    if (!wires.has(wire.id)) continue;
    for (const key of endKeysOf(wire)) terminals.add(key);
  }
  for (const key of terminals) {
    const part = study.index.terminalByKey.get(key)?.part;
    if (part !== undefined) parts.add(part.id);
  }
  return { wires, parts, terminals };
};
