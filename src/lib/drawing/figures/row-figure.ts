// Parts whose terminals stand in a column: strips, plugs, boards, controls, and anything that has
// no picture of its own. Each terminal is a row; lines leave it to the west and to the east.
import type { Terminal } from '#document/index.ts';
import { Sketch, type Box, type Figure, type Port } from './figure.ts';
import { drawHeader, measureHeader } from './header.ts';
import type { PartEnd } from './part-end.ts';
import { endsByTerminal, type FigureRequest } from './request.ts';
import { row, rowRoom } from './sizes.ts';
import { leave, lineCount, stackDepth, stackHeight, stackPlaces } from './stack.ts';

type Flank = 'east' | 'west';

/** Between what leaves one row and the next, at least, mm. */
const rowGap = 0.6;

export interface Row {
  readonly terminal: Terminal;
  /** Upper edge and height, mm. */
  readonly y: number;
  readonly height: number;
  readonly isUsed: boolean;
}

export interface RowPlan {
  readonly request: FigureRequest;
  /** Width of the part's own shape between its two flanks. */
  readonly coreWidth: number;
  /** Which flank an end leaves by. */
  readonly flankOf: (end: PartEnd) => Flank;
  /** Draws the shape; rows and box are in the figure's millimetres. */
  readonly draw: (sketch: Sketch, core: Box, rows: readonly Row[]) => void;
  readonly minRow?: number;
  /** More room at a flank than the marks need. */
  readonly extraDepth?: Readonly<Record<Flank, number>>;
  /** The shape shows the header itself. */
  readonly withoutHeader?: boolean;
  /** Adds ports that belong to no row, such as the mouth of a cable. */
  readonly addPorts?: (ports: Port[], core: Box, width: number, rows: readonly Row[]) => void;
}

/** The figure of a part with its terminals in a column. */
export const buildRowFigure = (plan: RowPlan): Figure => {
  const { request, coreWidth, flankOf } = plan;
  const { part, terminals, ends } = request;
  const sketch = new Sketch();
  const ports: Port[] = [];
  const byTerminal = endsByTerminal(ends);
  const split = terminals.map((terminal) => {
    const own = byTerminal.get(terminal.id) ?? [];
    const east = own.filter((end) => flankOf(end) === 'east');
    const west = own.filter((end) => flankOf(end) === 'west');
    const height = rowRoom(
      Math.max(
        plan.minRow ?? row.height,
        stackHeight(east, 'east') + rowGap,
        stackHeight(west, 'west') + rowGap
      ),
      Math.max(lineCount(east), lineCount(west))
    );
    return { terminal, east, west, height, isUsed: own.length > 0 };
  });
  const depthOf = (flank: Flank): number =>
    Math.max(
      plan.extraDepth?.[flank] ?? 0,
      ...split
        .map((one) => stackDepth(one[flank], flank))
        .map((depth) => (depth > 0 ? depth + 0.5 : 0))
    );
  const header = measureHeader(part);
  const top = plan.withoutHeader ? 0 : header.height;
  const west = depthOf('west');
  const east = depthOf('east');
  // The header may hang over the core, but not out of the box.
  const over = plan.withoutHeader ? 0 : Math.max(0, (header.width - coreWidth) / 2);
  const left = Math.max(west, over);
  const right = Math.max(east, over);
  const width = left + coreWidth + right;
  const rows: Row[] = [];
  let y = top;
  for (const { terminal, height, isUsed } of split) {
    rows.push({ terminal, y, height, isUsed });
    y += height;
  }
  const core: Box = { x: left, y: top, width: coreWidth, height: y - top };
  if (!plan.withoutHeader) drawHeader(sketch, header, left + coreWidth / 2, 0);
  plan.draw(sketch, core, rows);
  split.forEach((one, index) => {
    const own = rows[index];
    if (!own) return;
    const middle = own.y + own.height / 2;
    leave(sketch, ports, stackPlaces(one.west, 'west', middle), 'west', core.x, 0);
    leave(sketch, ports, stackPlaces(one.east, 'east', middle), 'east', core.x + coreWidth, width);
  });
  plan.addPorts?.(ports, core, width, rows);
  return { width, height: y, ports, items: sketch.items };
};
