// Photos of one spot: of a terminal, a part or a wire.
import { sortByOrder, type ChassisDocument, type Id, type Photo } from '#document/index.ts';
import type { Study } from '#study/index.ts';
import type { Pick } from '../core/pick.ts';

export type SpotOf = NonNullable<Photo['of']>;

const keyOf = (of: SpotOf): string => {
  if ('wire' in of) return `wire ${String(of.wire)}`;
  return 'terminal' in of ? `${of.part}/${String(of.terminal)}` : `part ${of.part}`;
};

/** Photos of exactly this spot, in their order. */
export const spotPhotosOf = (
  { photos }: { readonly photos: ChassisDocument['photos'] },
  spot: SpotOf
): readonly Photo[] =>
  sortByOrder(photos).filter(({ of }) => of !== undefined && keyOf(of) === keyOf(spot));

/** What a photo is of that is taken of the pick; null where it is no longer there. */
export const spotOfPick = (pick: Pick, { index }: Study): SpotOf | null => {
  if (pick.kind === 'wire') return { wire: pick.id };
  if (pick.kind === 'part') return { part: pick.id };
  const entry = index.terminalByKey.get(pick.id);
  return entry === undefined ? null : { part: entry.part.id, terminal: entry.terminal.id };
};

/** The unit that a spot lies in, where that is known. */
export const unitOfSpot = ({ parts, wires }: ChassisDocument, of: SpotOf): Id | undefined => {
  if ('part' in of) return parts[String(of.part)]?.unit;
  const wire = 'wire' in of ? wires[of.wire] : undefined;
  const part = wire?.from.at?.part ?? wire?.to.at?.part;
  return part === undefined ? undefined : parts[part]?.unit;
};
