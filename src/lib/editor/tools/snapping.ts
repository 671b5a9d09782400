// Where a thing that is moved comes to rest: level with other parts, at an equal distance from two of
// them, else on the grid. What drew it there is shown as a guide.
import type { LengthUnit } from '../core/preferences.svelte.ts';
import type { PreviewShape, Spot } from './tool.ts';

export interface Snapped {
  readonly at: Spot;
  readonly guides: readonly PreviewShape[];
}

/** A step of the grid, mm: 1 mm, or 1/16 in. */
export const gridMm = (unit: LengthUnit): number => (unit === 'in' ? 25.4 / 16 : 1);

export interface SnapOptions {
  /** Middles of what stands still. */
  readonly others: readonly Spot[];
  /** So near something draws, mm. */
  readonly reachMm: number;
  readonly gridMm: number;
  /** Where the grid begins. */
  readonly origin: Spot;
  /** Nothing draws: the place is taken as it is. */
  readonly free?: boolean;
}

interface Draw {
  readonly to: number;
  readonly by: readonly Spot[];
}

type Axis = 'x' | 'y';
const across = { x: 'y', y: 'x' } as const;

/** So far apart on the other axis, things are not in one row any more, mm. */
const rowMm = 0.6;

/** Level with the middle of another thing. */
const levelDraws = (at: Spot, others: readonly Spot[], axis: Axis): Draw[] =>
  others
    .map((other) => ({ to: other[axis], by: [other] }))
    .filter(({ to }) => Math.abs(to - at[axis]) < 1e3);

/** Between two things of one row, or as far past the last as that is from the one before. */
const spacingDraws = (at: Spot, others: readonly Spot[], axis: Axis): Draw[] => {
  const row = others
    .filter((other) => Math.abs(other[across[axis]] - at[across[axis]]) < rowMm)
    .sort((a, b) => a[axis] - b[axis]);
  const draws: Draw[] = [];
  for (const [n, one] of row.entries()) {
    const next = row[n + 1];
    if (next === undefined) break;
    const pitch = next[axis] - one[axis];
    draws.push({ to: one[axis] + pitch / 2, by: [one, next] });
    if (n === 0) draws.push({ to: one[axis] - pitch, by: [one, next] });
    if (n + 2 === row.length) draws.push({ to: next[axis] + pitch, by: [one, next] });
  }
  return draws;
};

const nearestDraw = (draws: readonly Draw[], from: number, reachMm: number): Draw | null => {
  let best: Draw | null = null;
  for (const draw of draws) {
    const far = Math.abs(draw.to - from);
    if (far <= reachMm && (best === null || far < Math.abs(best.to - from))) best = draw;
  }
  return best;
};

const guideOf = (at: Spot, { by }: Draw): PreviewShape[] =>
  by.map((other) => ({
    shape: { kind: 'line', points: [other.x, other.y, at.x, at.y] },
    style: 'hand.guide'
  }));

/** Where `at` comes to rest, and the lines that say why. */
export const snap = (at: Spot, options: SnapOptions): Snapped => {
  if (options.free === true) return { at, guides: [] };
  const { others, reachMm, origin, gridMm: step } = options;
  const onGrid = (axis: Axis): number =>
    Math.round((at[axis] - origin[axis]) / step) * step + origin[axis];
  const level = {
    x: nearestDraw(levelDraws(at, others, 'x'), at.x, reachMm),
    y: nearestDraw(levelDraws(at, others, 'y'), at.y, reachMm)
  };
  const onRow = { x: level.x?.to ?? at.x, y: level.y?.to ?? at.y };
  const spaced = {
    x: level.x ? null : nearestDraw(spacingDraws(onRow, others, 'x'), at.x, reachMm),
    y: level.y ? null : nearestDraw(spacingDraws(onRow, others, 'y'), at.y, reachMm)
  };
  const draws = { x: level.x ?? spaced.x, y: level.y ?? spaced.y };
  const rest = { x: draws.x?.to ?? onGrid('x'), y: draws.y?.to ?? onGrid('y') };
  const guides = [draws.x, draws.y].flatMap((draw) => (draw ? guideOf(rest, draw) : []));
  return { at: rest, guides };
};
