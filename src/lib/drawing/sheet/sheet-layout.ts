// Where the panels of the foot go: in columns below the drawing, as few and as even as fit its width,
// the title block in the lower right corner.
import type { Panel } from './panel.ts';

export interface PanelPlace {
  readonly panel: Panel;
  readonly x: number;
  readonly y: number;
}

export interface FootLayout {
  readonly places: readonly PanelPlace[];
  readonly width: number;
  readonly height: number;
}

const gap = 7;
const stackGap = 5;

interface Column {
  readonly panels: Panel[];
  width: number;
  height: number;
}

const fill = (panels: readonly Panel[], cap: number): Column[] => {
  const columns: Column[] = [];
  for (const panel of panels) {
    const last = columns.at(-1);
    if (last && last.height + stackGap + panel.height <= cap) {
      last.panels.push(panel);
      last.height += stackGap + panel.height;
      last.width = Math.max(last.width, panel.width);
    } else columns.push({ panels: [panel], width: panel.width, height: panel.height });
  }
  return columns;
};

const widthOf = (columns: readonly Column[]): number =>
  columns.reduce((sum, { width }) => sum + width, Math.max(0, columns.length - 1) * gap);

/** Columns for panels under a drawing that is `available` wide; the last panel ends the last column. */
export const layoutFoot = (panels: readonly Panel[], available: number): FootLayout => {
  const tallest = Math.max(0, ...panels.map(({ height }) => height));
  let columns = fill(panels, tallest);
  for (let cap = tallest; widthOf(columns) > available && columns.length > 1; cap *= 1.12) {
    columns = fill(panels, cap);
  }
  const height = Math.max(0, ...columns.map((column) => column.height));
  const width = Math.max(available, widthOf(columns));
  const places: PanelPlace[] = [];
  let x = 0;
  columns.forEach((column, index) => {
    const isLast = index === columns.length - 1;
    let y = 0;
    column.panels.forEach((panel, turn) => {
      const endsColumn = turn === column.panels.length - 1;
      // The title block sits in the corner, where people look for it.
      const inCorner = isLast && endsColumn;
      const left = inCorner ? width - panel.width : isLast ? width - column.width : x;
      places.push({ panel, x: left, y: inCorner ? height - panel.height : y });
      y += panel.height + stackGap;
    });
    x += column.width + gap;
  });
  return { places, width, height };
};
