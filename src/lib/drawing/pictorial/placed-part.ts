// A part with its place on the sheet: everything of it in millimetres of the sheet, turned and, seen
// from above, mirrored.
import type { Id, Part, Terminal } from '#document/index.ts';
import type { Spot } from '../presentation/sides.ts';
import { lookOf, outlineOf, type Look, type Outline } from './outlines.ts';
import { offsetsOf, splitPins } from './terminal-offsets.ts';
import { plus, turnedBy } from './vectors.ts';

/** How a part stands on the sheet. */
export interface Pose {
  readonly at: Spot;
  /** Clockwise as seen from below. */
  readonly rotation: number;
  /** Seen from above: right and left trade places. */
  readonly mirrored: boolean;
}

/** From the part's middle, as measured, to the sheet. */
export const toSheet = ({ at, rotation, mirrored }: Pose, offset: Spot): Spot => {
  const turned = rotation === 0 ? offset : turnedBy(offset, rotation);
  return plus(at, mirrored ? { x: -turned.x, y: turned.y } : turned);
};

export interface PlacedPart {
  readonly part: Part;
  readonly terminals: readonly Terminal[];
  readonly look: Look;
  readonly outline: Outline;
  readonly offsets: ReadonlyMap<Id, Spot>;
  readonly pose: Pose;
  /** Each terminal's place on the sheet. */
  readonly spots: ReadonlyMap<Id, Spot>;
  /** Stands in the tray: nobody said where it is. */
  readonly inTray: boolean;
}

/** The part at a pose. */
export function placePart(
  part: Part,
  terminals: readonly Terminal[],
  pose: Pose,
  inTray: boolean
): PlacedPart {
  const look = lookOf(part, terminals);
  const offsets = offsetsOf(part, terminals);
  const listed = (some: readonly Terminal[]): Spot[] =>
    some.map(({ id }) => offsets.get(id) ?? { x: 0, y: 0 });
  const outline = outlineOf(look, listed(terminals), listed(splitPins(terminals).pins));
  const spots = new Map([...offsets].map(([id, offset]) => [id, toSheet(pose, offset)]));
  return { part, terminals, look, outline, offsets, pose, spots, inTray };
}

/** The outline's corners on the sheet, clockwise or, mirrored, the other way; `more` wider all round.
 *  A circle becomes a polygon around it with `sides` corners. */
export function outlineCorners(
  { outline, pose }: Pick<PlacedPart, 'outline' | 'pose'>,
  more = 0,
  sides = 8
): Spot[] {
  if (outline.kind === 'circle') {
    const r = (outline.r + more) / Math.cos(Math.PI / sides);
    return Array.from({ length: sides }, (_, index) => {
      const turn = (2 * Math.PI * (index + 0.5)) / sides;
      return { x: pose.at.x + r * Math.cos(turn), y: pose.at.y + r * Math.sin(turn) };
    });
  }
  const { left, top, right, bottom } = outline;
  return [
    { x: left - more, y: top - more },
    { x: right + more, y: top - more },
    { x: right + more, y: bottom + more },
    { x: left - more, y: bottom + more }
  ].map((corner) => toSheet(pose, corner));
}
