// How a drawing lies on paper: on one sheet as large as it fits, or at a given scale over as many sheets as
// that takes, each sharing a strip with its neighbours so that they can be cut and joined.
import type { DisplayList } from '../display-list.ts';
import type { Box } from '../figures/figure.ts';
import { paperSizesMm, type PaperName } from './paper-sizes.ts';

/** Printers leave the edge of the paper blank; what is joined must lie inside of it. */
export const marginMm = 10;
/** What neighbouring sheets share. */
export const overlapMm = 10;
const mostSheets = 150;

export interface PaperWish {
  readonly paper: PaperName;
  /** Millimetres of paper for a millimetre of the drawing: 1 is true size. `fit` is as large as it fits. */
  readonly scale: number | 'fit';
  /** With `fit`: so many sheets side by side. 1 if not given. */
  readonly across?: number;
}

export interface SheetWindow {
  readonly column: number;
  readonly row: number;
  /** What of the drawing lies between the margins of this sheet, mm of the drawing. */
  readonly box: Box;
}

export interface PaperPlan {
  /** Of every sheet, as it lies. */
  readonly width: number;
  readonly height: number;
  readonly scale: number;
  readonly columns: number;
  readonly rows: number;
  readonly windows: readonly SheetWindow[];
  /** The whole drawing, mm of the drawing. */
  readonly bounds: DisplayList['bounds'];
}

/** A wish that no paper meets. The message says the limit and the way out. */
export class PaperError extends Error {
  override readonly name = 'PaperError';
}

const sheetsFor = (length: number, room: number): number =>
  length <= room + 1e-6 ? 1 : Math.ceil((length - overlapMm - 1e-6) / (room - overlapMm));

/** The largest length that so many sheets hold. */
const lengthOn = (sheets: number, room: number): number => room + (sheets - 1) * (room - overlapMm);

interface Turned {
  readonly width: number;
  readonly height: number;
  readonly scale: number;
  readonly columns: number;
  readonly rows: number;
}

const layTurned = (
  bounds: DisplayList['bounds'],
  [width, height]: readonly [number, number],
  { scale: wish, across = 1 }: PaperWish
): Turned => {
  const [roomX, roomY] = [width - 2 * marginMm, height - 2 * marginMm];
  const scale =
    wish !== 'fit'
      ? wish
      : across === 1
        ? Math.min(roomX / bounds.width, roomY / bounds.height)
        : lengthOn(across, roomX) / bounds.width;
  return {
    width,
    height,
    scale,
    columns: sheetsFor(bounds.width * scale, roomX),
    rows: sheetsFor(bounds.height * scale, roomY)
  };
};

/** Fewer sheets are better; among as many, the larger drawing. */
const better = (a: Turned, b: Turned): Turned => {
  const [sheetsA, sheetsB] = [a.columns * a.rows, b.columns * b.rows];
  if (sheetsA !== sheetsB) return sheetsA < sheetsB ? a : b;
  return b.scale > a.scale * 1.001 ? b : a;
};

/** Lays a drawing on paper, upright or across, whichever takes fewer sheets or shows it larger.
 *  @throws PaperError for a scale that is no scale, and above 150 sheets */
export const layOnPaper = (bounds: DisplayList['bounds'], wish: PaperWish): PaperPlan => {
  const { scale: asked, across = 1 } = wish;
  if (asked !== 'fit' && !(asked >= 0.01 && asked <= 100))
    throw new PaperError(`a scale of ${asked}: give 0.01 to 100 mm of paper for a millimetre`);
  if (!(Number.isInteger(across) && across >= 1 && across <= 12))
    throw new PaperError(`${across} sheets side by side: give a whole number from 1 to 12`);
  const [short, long] = paperSizesMm[wish.paper];
  const chosen = better(
    layTurned(bounds, [short, long], wish),
    layTurned(bounds, [long, short], wish)
  );
  const { width, height, scale, columns, rows } = chosen;
  if (columns * rows > mostSheets)
    throw new PaperError(
      `${columns * rows} sheets of ${wish.paper}, and the most is ${mostSheets}: choose larger paper or a smaller scale`
    );
  const room = { width: (width - 2 * marginMm) / scale, height: (height - 2 * marginMm) / scale };
  const shared = overlapMm / scale;
  const total = (sheets: number, one: number): number => sheets * one - (sheets - 1) * shared;
  // What is left over lies on both sides alike.
  const left = bounds.x - (total(columns, room.width) - bounds.width) / 2;
  const top = bounds.y - (total(rows, room.height) - bounds.height) / 2;
  const windows = Array.from({ length: columns * rows }, (_, index): SheetWindow => {
    const [column, row] = [index % columns, Math.floor(index / columns)];
    return {
      column,
      row,
      box: {
        x: left + column * (room.width - shared),
        y: top + row * (room.height - shared),
        ...room
      }
    };
  });
  return { width, height, scale, columns, rows, windows, bounds };
};
