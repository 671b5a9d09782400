// What can be proved of a laid-out diagram: counts of everything that makes lines hard to follow.
// A figure of 0 where it must be 0 is checked after every layout, not hoped for.
import type { Box } from './figures/figure.ts';
import type { DiagramLine, Geometry } from './layout/geometry.ts';
import type { Spot } from './presentation/sides.ts';

const near = 1e-3;

interface Piece {
  readonly line: number;
  /** Where it lies: y of a level piece, x of an upright one. */
  readonly at: number;
  readonly from: number;
  readonly to: number;
}

interface Pieces {
  readonly level: readonly Piece[];
  readonly upright: readonly Piece[];
  readonly slanted: number;
}

const piecesOf = (lines: readonly DiagramLine[]): Pieces => {
  const level: Piece[] = [];
  const upright: Piece[] = [];
  let slanted = 0;
  lines.forEach(({ route }, line) => {
    for (let index = 1; index < route.length; index++) {
      const a = route[index - 1] as Spot;
      const b = route[index] as Spot;
      if (Math.abs(a.y - b.y) < near) {
        level.push({ line, at: a.y, from: Math.min(a.x, b.x), to: Math.max(a.x, b.x) });
      } else if (Math.abs(a.x - b.x) < near) {
        upright.push({ line, at: a.x, from: Math.min(a.y, b.y), to: Math.max(a.y, b.y) });
      } else slanted++;
    }
  });
  return { level, upright, slanted };
};

const terminalsOf = ({ link }: DiagramLine): readonly string[] =>
  [link.from, link.to].map(({ part, terminal }) => `${part}/${terminal ?? ''}`);

/** Lines that meet at a terminal may touch there. */
const areRelated = (a: DiagramLine, b: DiagramLine): boolean => {
  const own = terminalsOf(a);
  return terminalsOf(b).some((terminal) => own.includes(terminal));
};

/** Pairs of unrelated lines that cross. A pair that crosses twice counts twice. */
export const countCrossings = ({ lines }: Geometry): number => {
  const { level, upright } = piecesOf(lines);
  const sorted = [...upright].sort((a, b) => a.at - b.at);
  const places = sorted.map(({ at }) => at);
  let count = 0;
  for (const flat of level) {
    let index = firstAbove(places, flat.from + near);
    for (; index < sorted.length; index++) {
      const tall = sorted[index] as Piece;
      if (tall.at >= flat.to - near) break;
      if (tall.line === flat.line) continue;
      if (flat.at <= tall.from + near || flat.at >= tall.to - near) continue;
      if (!areRelated(lines[flat.line] as DiagramLine, lines[tall.line] as DiagramLine)) count++;
    }
  }
  return count;
};

const firstAbove = (sorted: readonly number[], value: number): number => {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as number) > value) high = middle;
    else low = middle + 1;
  }
  return low;
};

/** A stretch that two unrelated lines share. */
export interface Overlap {
  readonly a: string;
  readonly b: string;
  readonly lengthMm: number;
}

const overlapsAmong = (pieces: readonly Piece[], lines: readonly DiagramLine[]): Overlap[] => {
  const sorted = [...pieces].sort((a, b) => a.at - b.at);
  const found: Overlap[] = [];
  for (let index = 0; index < sorted.length; index++) {
    const one = sorted[index] as Piece;
    for (let other = index + 1; other < sorted.length; other++) {
      const two = sorted[other] as Piece;
      // Closer than a line is wide, nobody can tell them apart.
      if (two.at - one.at > 0.6) break;
      const shared = Math.min(one.to, two.to) - Math.max(one.from, two.from);
      if (one.line === two.line || shared < 0.05) continue;
      const [a, b] = [lines[one.line] as DiagramLine, lines[two.line] as DiagramLine];
      if (!areRelated(a, b)) found.push({ a: a.link.id, b: b.link.id, lengthMm: shared });
    }
  }
  return found;
};

/** Stretches on which two lines without a common terminal run on one another, or nearly. */
export const findOverlaps = ({ lines }: Geometry): Overlap[] => {
  const { level, upright } = piecesOf(lines);
  return [...overlapsAmong(level, lines), ...overlapsAmong(upright, lines)];
};

const isInside = (box: Box, piece: Piece, isLevel: boolean): boolean => {
  const [across, along] = isLevel ? [box.y, box.x] : [box.x, box.y];
  const [deep, long] = isLevel ? [box.height, box.width] : [box.width, box.height];
  return (
    piece.at > across + near &&
    piece.at < across + deep - near &&
    Math.min(piece.to, along + long) - Math.max(piece.from, along) > near
  );
};

/** Lines and the parts that they run through: must be empty. */
export const findWiresThroughParts = ({
  lines,
  parts
}: Geometry): { line: string; part: string }[] => {
  const { level, upright } = piecesOf(lines);
  const found: { line: string; part: string }[] = [];
  for (const { id, box } of parts) {
    for (const [pieces, isLevel] of [
      [level, true],
      [upright, false]
    ] as const) {
      for (const piece of pieces) {
        if (isInside(box, piece, isLevel)) {
          found.push({ line: (lines[piece.line] as DiagramLine).link.id, part: id });
        }
      }
    }
  }
  return found;
};

/** Pairs of parts that lie on each other: must be empty. */
export const findPartClashes = ({ parts }: Geometry): { a: string; b: string }[] => {
  const found: { a: string; b: string }[] = [];
  parts.forEach((one, index) => {
    for (const two of parts.slice(index + 1)) {
      const apart =
        one.box.x + one.box.width <= two.box.x + near ||
        two.box.x + two.box.width <= one.box.x + near ||
        one.box.y + one.box.height <= two.box.y + near ||
        two.box.y + two.box.height <= one.box.y + near;
      if (!apart) found.push({ a: one.id, b: two.id });
    }
  });
  return found;
};

/** Turns of all lines, outside the parts. */
export const countBends = ({ lines }: Geometry): number =>
  lines.reduce((sum, { route }) => sum + Math.max(0, route.length - 2), 0);

/** Pieces that are neither level nor upright, outside the parts: must be 0. */
export const countSlanted = ({ lines }: Geometry): number => piecesOf(lines).slanted;

/** Length of all lines outside the parts, mm. */
export const totalLengthMm = ({ lines }: Geometry): number =>
  lines.reduce((sum, { route }) => {
    let own = 0;
    for (let index = 1; index < route.length; index++) {
      const [a, b] = [route[index - 1] as Spot, route[index] as Spot];
      own += Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
    }
    return sum + own;
  }, 0);

export interface Proofs {
  readonly lines: number;
  readonly crossings: number;
  readonly bends: number;
  readonly lengthMm: number;
  readonly overlaps: readonly Overlap[];
  readonly throughParts: readonly { readonly line: string; readonly part: string }[];
  readonly partClashes: readonly { readonly a: string; readonly b: string }[];
  readonly slanted: number;
}

/** All counts of one diagram. */
export const proveGeometry = (geometry: Geometry): Proofs => ({
  lines: geometry.lines.length,
  crossings: countCrossings(geometry),
  bends: countBends(geometry),
  lengthMm: totalLengthMm(geometry),
  overlaps: findOverlaps(geometry),
  throughParts: findWiresThroughParts(geometry),
  partClashes: findPartClashes(geometry),
  slanted: countSlanted(geometry)
});
