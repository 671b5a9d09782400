// Where on the sheet each unit stands: those that feed the biggest in a column on its left, those that
// it feeds on its right, and all of it about as wide as paper is for its height.
import type { Box } from '../../figures/figure.ts';

/** A unit before it has a place, in lanes. */
export interface Ground {
  /** What its parts need, with room for their wires. */
  readonly area: number;
  /** Its widest and its tallest part, with room. */
  readonly least: { readonly width: number; readonly height: number };
}

/** Width for height that the drawing should have. */
const wantedShape = 1.55;
/** Lanes between columns and between units in one. */
export const gutter = { columns: 14, units: 11 } as const;

interface Column {
  readonly units: readonly number[];
  readonly width: number;
  readonly height: number;
}

const areaOf = (grounds: readonly Ground[], units: readonly number[]): number =>
  units.reduce((sum, unit) => sum + (grounds[unit]?.area ?? 0), 0);

const columnOf = (grounds: readonly Ground[], units: readonly number[], high: number): Column => {
  const least = Math.max(0, ...units.map((unit) => grounds[unit]?.least.width ?? 0));
  const width = Math.ceil(Math.max(least, areaOf(grounds, units) / high));
  const height = units.reduce((sum, unit) => {
    const { area, least: own } = grounds[unit] as Ground;
    return sum + Math.max(own.height, Math.ceil(area / width)) + gutter.units;
  }, -gutter.units);
  return { units, width, height };
};

/** A box for each unit, in lanes.
 *  @param biggest which of them stands in the middle: those before it on its left, those after on its right */
export const layRegions = (grounds: readonly Ground[], biggest: number): Box[] => {
  const all = grounds.map((_, index) => index);
  const sets = [all.slice(0, biggest), [biggest], all.slice(biggest + 1)];
  const high = Math.sqrt(areaOf(grounds, all) / wantedShape);
  const columns = sets
    .filter((units) => units.length > 0)
    .map((units) => columnOf(grounds, units, high));
  const tallest = Math.max(high, ...columns.map(({ height }) => height));
  const boxes: Box[] = [];
  let x = 0;
  for (const column of columns) {
    const isMiddle = column.units[0] === biggest;
    const width = isMiddle ? columnOf(grounds, column.units, tallest).width : column.width;
    // What is left of the height is shared out.
    const spare = Math.max(0, tallest - column.height) / column.units.length;
    let y = 0;
    for (const unit of column.units) {
      const { area, least } = grounds[unit] as Ground;
      const height = Math.max(least.height, Math.ceil(area / width)) + (isMiddle ? 0 : spare);
      boxes[unit] = { x, y: Math.round(y), width, height: Math.ceil(height) };
      y += height + gutter.units;
    }
    x += width + gutter.columns;
  }
  return boxes;
};
