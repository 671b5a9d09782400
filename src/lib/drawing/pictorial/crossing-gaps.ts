// Where wires cross: the upper one clears a short gap in the lower, so that nobody takes a crossing
// for a joint or one wire for the other. Wires side by side leave each other alone.
import RBush from 'rbush';
import type { Spot } from '../presentation/sides.ts';
import { cross, minus, plus, times, unitOf } from './vectors.ts';

export interface CrossingLine {
  readonly line: readonly Spot[];
  readonly widthMm: number;
}

interface Piece {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly line: number;
  readonly from: Spot;
  readonly to: Spot;
}

const besideMm = 0.5;
const longestMm = 3;
/** Flatter crossings than this (sine of the angle) get no gap: it would eat the wire beside it. */
const flattest = 0.22;

const piecesOf = ({ line }: CrossingLine, number: number): Piece[] =>
  line.slice(1).map((to, n) => {
    const from = line[n] ?? to;
    return {
      minX: Math.min(from.x, to.x),
      minY: Math.min(from.y, to.y),
      maxX: Math.max(from.x, to.x),
      maxY: Math.max(from.y, to.y),
      line: number,
      from,
      to
    };
  });

/** Where two straight pieces cross, as a place; null where they do not. */
export function crossingOf(a: Spot, b: Spot, c: Spot, d: Spot): Spot | null {
  const [ab, cd] = [minus(b, a), minus(d, c)];
  const across = cross(ab, cd);
  if (Math.abs(across) < 1e-9) return null;
  const t = cross(minus(c, a), cd) / across;
  const u = cross(minus(c, a), ab) / across;
  return t > 0 && t <= 1 && u > 0 && u <= 1 ? plus(a, times(ab, t)) : null;
}

/** For each line the short pieces of it that clear those before it in the list. */
export function findCrossingGaps(lines: readonly CrossingLine[]): readonly (readonly Spot[])[][] {
  const tree = new RBush<Piece>();
  const pieces = lines.map(piecesOf);
  tree.load(pieces.flat());
  return pieces.map((own, upper) => {
    const gaps: Spot[][] = [];
    for (const piece of own) {
      const way = unitOf(minus(piece.to, piece.from));
      for (const other of tree.search(piece)) {
        if (other.line >= upper) continue;
        const at = crossingOf(piece.from, piece.to, other.from, other.to);
        const sine = Math.abs(cross(way, unitOf(minus(other.to, other.from))));
        if (!at || sine < flattest) continue;
        const half = Math.min(longestMm, ((lines[other.line]?.widthMm ?? 0) / 2 + besideMm) / sine);
        gaps.push([plus(at, times(way, -half)), plus(at, times(way, half))]);
      }
    }
    return gaps;
  });
}
