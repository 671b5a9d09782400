// Which unit each part stands in. Columns for the two ends say so outright; one column for the wire
// only hints, as a wire may leave its unit, so the part's wires vote.
import { ordersBetween, type MakeId, type Unit } from '#document/index.ts';
import type { PartDraft } from './part-drafts.ts';
import type { EndFields, WireDraft } from './wire-draft.ts';

export const mainUnitName = 'Main chassis';

interface UnitVote {
  readonly side: 'from' | 'to';
  readonly unit: string;
  readonly weight: number;
}

/** The votes of a wire for the units of its ends. A wire from one unit to another names both, and
 *  counts for more than one that names its own unit once. */
export const unitVotesOf = ({ from, to }: WireDraft): readonly UnitVote[] => {
  const weight = from.unit !== null && to.unit !== null && from.unit !== to.unit ? 3 : 1;
  const votes: UnitVote[] = [];
  if (from.unit !== null) votes.push({ side: 'from', unit: from.unit, weight });
  if (to.unit !== null) votes.push({ side: 'to', unit: to.unit, weight });
  return votes;
};

/** Two units may each have a V1. A reference that is said to stand in several units is told apart by
 *  the unit; any other is one part, wherever its wires are listed. Only columns that name the unit
 *  of an end, and not that of the wire, can say so. */
export const findScopes = (wires: readonly WireDraft[]): ((end: EndFields) => string) => {
  const unitsOf = new Map<string, Set<string>>();
  let hasEndUnits = false;
  for (const { from, to } of wires) {
    if (from.unit !== to.unit && from.unit !== null && to.unit !== null) hasEndUnits = true;
    for (const { end, unit } of [from, to]) {
      if (end.kind !== 'terminal' || unit === null) continue;
      const key = end.reference.toLowerCase();
      unitsOf.set(key, (unitsOf.get(key) ?? new Set()).add(unit.toLowerCase()));
    }
  }
  return ({ end, unit }) => {
    if (!hasEndUnits || end.kind !== 'terminal' || unit === null) return '';
    const known = unitsOf.get(end.reference.toLowerCase());
    return known !== undefined && known.size > 1 ? unit : '';
  };
};

// A speaker, a cabinet or a printed board has no metal that is the chassis; "metal at GL2" says that
// its unit's metal stands apart.
const metalOf = (name: string, isApart: boolean): Unit['metal'] => {
  if (isApart) return 'apart';
  return /speaker|cabinet|neck|yoke|picture tube|\bcrt\b|board|pcb|antenna/i.test(name)
    ? 'none'
    : 'bonded';
};

/** The units that the parts stand in, and each part's own. */
export const chooseUnits = (
  drafts: readonly PartDraft[],
  makeId: MakeId
): { readonly units: readonly Unit[]; readonly unitOf: (draft: PartDraft) => Unit } => {
  const choices = new Map<PartDraft, string>();
  const names = new Map<string, string>();
  for (const draft of drafts) {
    const [best] = [...draft.unitVotes].sort((a, b) => b[1] - a[1]);
    if (!best) continue;
    const key = best[0].toLowerCase();
    if (!names.has(key)) names.set(key, best[0]);
    choices.set(draft, key);
  }
  const main = [...names.keys()].find((key) => /^main\b/.test(key)) ?? mainUnitName.toLowerCase();
  const needsMain = names.size === 0 || drafts.some((draft) => !choices.has(draft));
  if (needsMain && !names.has(main)) names.set(main, mainUnitName);
  const apart = new Set(
    drafts.filter(({ isApart }) => isApart).map((draft) => choices.get(draft) ?? main)
  );
  const orders = ordersBetween(null, null, names.size);
  const units = new Map(
    [...names].map(([key, name], index): readonly [string, Unit] => {
      const unit = {
        id: makeId('unit'),
        order: orders[index] ?? 'a0',
        name,
        metal: metalOf(name, apart.has(key))
      };
      return [key, unit];
    })
  );
  const fallback = units.get(main) ?? [...units.values()][0];
  const unitOf = (draft: PartDraft): Unit => {
    const unit = units.get(choices.get(draft) ?? main) ?? fallback;
    if (!unit) throw new RangeError('a list without units cannot have parts');
    return unit;
  };
  return { units: [...units.values()], unitOf };
};
