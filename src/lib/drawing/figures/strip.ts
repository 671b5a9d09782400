// A terminal strip: a bar with its lugs across it, feet filled. Also boards, splices, ground lugs
// and parts that have no picture of their own: all of them rows with both flanks open.
import { fitText, textWidthMm } from '../text-width.ts';
import type { Box, Figure, Sketch } from './figure.ts';
import type { PartEnd } from './part-end.ts';
import { cheaper, type FigureRequest } from './request.ts';
import { buildRowFigure, type Row } from './row-figure.ts';
import { type } from './sizes.ts';

const flankOf = (end: PartEnd): 'east' | 'west' =>
  cheaper([end], 'east', 'west') === 'east' ? 'east' : 'west';
const nameLook = { size: type.pin, face: 'mono' } as const;

const widestName = ({ terminals }: FigureRequest): number =>
  Math.max(0, ...terminals.map(({ name }) => textWidthMm(name, nameLook)));

const drawNames = (
  sketch: Sketch,
  core: Box,
  rows: readonly Row[],
  style = 'part.pin.name'
): void => {
  for (const { terminal, y, height } of rows) {
    const text = fitText(terminal.name, core.width - 1, nameLook);
    sketch.text(style, text, core.x + core.width / 2, y + height / 2, {
      ...nameLook,
      terminal: terminal.id,
      layer: 'terminals'
    });
  }
};

/** A bar with its lugs; a lug that is a foot is filled. */
export const buildStrip = (request: FigureRequest): Figure =>
  buildRowFigure({
    request,
    coreWidth: Math.min(16, Math.max(8.6, widestName(request) + 4)),
    flankOf,
    draw: (sketch, core, rows) => {
      const inset = core.width * 0.27;
      const bar = { ...core, x: core.x + inset, width: core.width - 2 * inset };
      sketch.box('part.bar', { ...bar, y: bar.y - 0.5, height: bar.height + 1 }, 1);
      for (const { terminal, y, height } of rows) {
        const lug = { x: core.x, y: y + 0.55, width: core.width, height: height - 1.1 };
        const style = terminal.grounded ? 'part.foot' : 'part.lug';
        sketch.box(style, lug, Math.min(1.65, lug.height / 2), { terminal: terminal.id });
      }
      drawNames(sketch, core, rows);
    }
  });

/** A plain box with a name in each row. */
export const buildPlainBox = (request: FigureRequest): Figure =>
  buildRowFigure({
    request,
    coreWidth: Math.min(24, Math.max(10, widestName(request) + 3)),
    flankOf,
    draw: (sketch, core, rows) => {
      const isBoard = request.part.kind === 'board';
      sketch.box(isBoard ? 'part.board' : 'part.body', core, 0.8);
      for (const { y } of rows.slice(1)) {
        sketch.line('part.fine', [core.x + 1, y, core.x + core.width - 1, y]);
      }
      drawNames(sketch, core, rows);
    }
  });

/** One point where wires meet: a splice, a clip, a lug on the metal. */
export const buildPoint = (request: FigureRequest): Figure =>
  buildRowFigure({
    request,
    coreWidth: 3.4,
    minRow: 3.4,
    flankOf: request.part.kind === 'ground lug' ? () => 'east' : flankOf,
    draw: (sketch, core, rows) => {
      for (const { terminal, y, height } of rows) {
        const pill = { x: core.x, y: y + 0.4, width: core.width, height: height - 0.8 };
        const style = terminal.grounded ? 'part.foot' : 'part.lug';
        sketch.box(style, pill, pill.width / 2, { terminal: terminal.id });
        if (terminal.grounded) continue;
        sketch.circle('part.dot', core.x + core.width / 2, y + height / 2, 0.6, {
          terminal: terminal.id
        });
      }
    }
  });
