// The numbered marks that tie the notes to their places on the drawing.
import type { Finding } from '#checks/index.ts';
import type { Id } from '#document/index.ts';
import type { Box } from './figures/figure.ts';
import type { Geometry } from './layout/geometry.ts';
import type { Spot } from './presentation/sides.ts';

export interface FindingMark {
  readonly number: number;
  readonly finding: Finding;
  readonly at: Spot;
}

export const markRadius = 2.2;
const step = markRadius * 2 + 0.3;

/** What can be found again on the drawing. */
export interface MarkPlaces {
  readonly geometry: Geometry;
  /** Boxes in which a wire's number stands, the first one being its main place. */
  readonly numbers: ReadonlyMap<Id, readonly Box[]>;
  readonly componentHost: ReadonlyMap<Id, Id>;
}

/** Places around a box where a mark covers none of it, the best first. */
const cornersOf = ({ x, y, width, height }: Box): Spot[] => {
  const out = 1.6;
  const [left, right, top, foot] = [x - out, x + width + out, y - out, y + height + out];
  return [
    { x: right, y: top },
    { x: left, y: top },
    { x: right, y: foot },
    { x: left, y: foot },
    { x: x + width / 2, y: y - markRadius - 0.2 },
    { x: x + width / 2, y: y + height + markRadius + 0.2 }
  ];
};

const isClear = ({ x, y }: Spot, boxes: readonly Box[]): boolean =>
  boxes.every(
    (box) =>
      x + markRadius <= box.x ||
      x - markRadius >= box.x + box.width ||
      y + markRadius <= box.y ||
      y - markRadius >= box.y + box.height
  );

const boxAround = ({ x, y }: Spot): Box => ({
  x: x - markRadius,
  y: y - markRadius,
  width: 2 * markRadius,
  height: 2 * markRadius
});

/** Marks for the findings that have a place; several at one place stand in a row. */
export const placeMarks = (
  findings: readonly Finding[],
  isShown: (finding: Finding) => boolean,
  { geometry, numbers, componentHost }: MarkPlaces
): FindingMark[] => {
  const parts = new Map(geometry.parts.map(({ id, box }) => [id, box]));
  const units = new Map(
    geometry.frames.flatMap(({ block, box }) => (block.unit ? [[block.unit.id, box] as const] : []))
  );
  const partBox = (id: Id): Box | undefined =>
    parts.get(id) ?? parts.get(componentHost.get(id) ?? '');
  const allNumbers = [...numbers.values()].flat();
  const covered: Box[] = [];
  const cornerOf = (box: Box): Spot => {
    const others = [...allNumbers.filter((one) => one !== box), ...covered];
    const corners = cornersOf(box);
    const chosen = corners.find((corner) => isClear(corner, others)) ?? (corners[0] as Spot);
    covered.push(boxAround(chosen));
    return chosen;
  };
  const spotOf = (finding: Finding): Spot | null => {
    for (const { kind, id } of finding.at) {
      if (kind === 'wire') {
        const box = numbers.get(id)?.[0];
        if (box) return cornerOf(box);
      }
      const box =
        kind === 'part'
          ? partBox(id)
          : kind === 'terminal'
            ? partBox(id.split('/')[0] ?? '')
            : undefined;
      if (box) return { x: box.x + 1.5, y: box.y + 1.5 };
      const unit = kind === 'unit' ? units.get(id) : undefined;
      if (unit) return { x: unit.x + unit.width - 4, y: unit.y + 4 };
    }
    return null;
  };
  return stackMarks(findings, isShown, spotOf);
};

/** Marks for the findings to be shown that `spotOf` has a place for; several at one place stand in a
 *  row. A mark's number is the finding's place in the list, counted from 1. */
export const stackMarks = (
  findings: readonly Finding[],
  isShown: (finding: Finding) => boolean,
  spotOf: (finding: Finding) => Spot | null
): FindingMark[] => {
  const taken = new Map<string, number>();
  const marks: FindingMark[] = [];
  findings.forEach((finding, index) => {
    if (!isShown(finding)) return;
    const spot = spotOf(finding);
    if (!spot) return;
    const key = `${spot.x.toFixed(1)} ${spot.y.toFixed(1)}`;
    const before = taken.get(key) ?? 0;
    taken.set(key, before + 1);
    const at = { x: spot.x + before * step, y: spot.y };
    marks.push({ number: index + 1, finding, at });
  });
  return marks;
};
