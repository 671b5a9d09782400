// The order of parts along the signal: tubes as they are numbered, everything else beside the tubes
// that it is wired to. Lines are laid from lower to higher rank, so that the signal runs rightwards.
import type { Id, Part } from '#document/index.ts';

export interface RankLine {
  readonly from: Id;
  readonly to: Id;
  /** Rails and heater lines run everywhere and say little of where a part belongs. */
  readonly weight: number;
}

const kindOffset: Readonly<Record<string, number>> = {
  'terminal strip': 0.35,
  board: 0.35,
  transformer: 0.55,
  coil: 0.45,
  plug: 0.2,
  jack: 0.2
};

const isTube = (part: Part): boolean => part.kind === 'tube' || part.kind === 'picture tube';

const numberIn = (reference: string): number => Number(/\d+/.exec(reference)?.[0] ?? Infinity);

/** Tubes in the order of their numbers, as sets are numbered along the signal. */
const tubeOrder = (a: Part, b: Part): number =>
  numberIn(a.reference) - numberIn(b.reference) || (a.order < b.order ? -1 : 1);

/** A rank for each of the parts, 0, 1, 2 …, none twice. */
export const rankParts = (
  parts: readonly Part[],
  lines: readonly RankLine[]
): ReadonlyMap<Id, number> => {
  const place = new Map<Id, number>();
  const anchors = parts.filter(isTube).sort(tubeOrder);
  // A unit without tubes keeps the order in which its parts were written down.
  const fixed = anchors.length > 0 ? anchors : [...parts];
  fixed.forEach((part, index) => place.set(part.id, index));
  const isFixed = new Set(fixed.map(({ id }) => id));
  const near = new Map<Id, { id: Id; weight: number }[]>();
  const note = (at: Id, id: Id, weight: number) =>
    near.set(at, [...(near.get(at) ?? []), { id, weight }]);
  for (const { from, to, weight } of lines) {
    note(from, to, weight);
    note(to, from, weight);
  }
  for (let round = 0; round < 12; round++) {
    for (const part of parts) {
      if (isFixed.has(part.id)) continue;
      let sum = 0;
      let weights = 0;
      for (const { id, weight } of near.get(part.id) ?? []) {
        const other = place.get(id);
        if (other === undefined) continue;
        sum += (other + (kindOffset[part.kind] ?? 0.3)) * weight;
        weights += weight;
      }
      if (weights > 0) place.set(part.id, sum / weights);
    }
  }
  const last = fixed.length;
  const ordered = parts
    .map((part, index) => ({ id: part.id, at: place.get(part.id) ?? last + index / 1000, index }))
    .sort((a, b) => a.at - b.at || a.index - b.index);
  return new Map(ordered.map(({ id }, rank) => [id, rank]));
};
