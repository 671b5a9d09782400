// Parts that are wired at one flank and show themselves at the other: controls, speakers,
// antennas, and the picture tube with its anode button on top.
import { fitText, textWidthMm } from '../text-width.ts';
import { arcPoints, type Box, type Figure, type Port, type Sketch } from './figure.ts';
import { drawHeader, measureHeader } from './header.ts';
import { drawMark, measureMark } from './mark.ts';
import type { PartEnd } from './part-end.ts';
import { cheaper, type FigureRequest } from './request.ts';
import { buildRowFigure, type Row } from './row-figure.ts';
import { pitch, type } from './sizes.ts';

type Flank = 'east' | 'west';
const nameLook = { size: type.pin, face: 'mono' } as const;

interface FlankLook {
  readonly flank: Flank;
  /** Width of the picture beside the lugs. */
  readonly picture: number;
  readonly minRow?: number;
  readonly draw: (sketch: Sketch, box: Box, rows: readonly Row[], away: 1 | -1) => void;
}

const lugWidth = ({ terminals }: FigureRequest): number =>
  Math.min(14, Math.max(5, ...terminals.map(({ name }) => textWidthMm(name, nameLook) + 2)));

const drawLugs = (
  sketch: Sketch,
  core: Box,
  rows: readonly Row[],
  flank: Flank,
  width: number
): void => {
  const x = flank === 'east' ? core.x + core.width - width : core.x;
  for (const { terminal, y, height } of rows) {
    const lug = { x, y: y + 0.6, width, height: height - 1.2 };
    const style = terminal.grounded ? 'part.foot' : 'part.lug';
    sketch.box(style, lug, Math.min(1.5, lug.height / 2), { terminal: terminal.id });
    const text = fitText(terminal.name, width - 1, nameLook);
    sketch.text('part.pin.name', text, x + width / 2, y + height / 2, {
      ...nameLook,
      layer: 'terminals',
      terminal: terminal.id
    });
  }
};

const buildFlankFigure = (
  request: FigureRequest,
  look: FlankLook,
  extra: Partial<Parameters<typeof buildRowFigure>[0]> = {}
): Figure => {
  const lugs = lugWidth(request);
  return buildRowFigure({
    request,
    coreWidth: lugs + look.picture,
    flankOf: () => look.flank,
    ...(look.minRow === undefined ? {} : { minRow: look.minRow }),
    draw: (sketch, core, rows) => {
      const x = look.flank === 'east' ? core.x : core.x + lugs;
      const box = { x, y: core.y, width: look.picture, height: core.height };
      look.draw(sketch, box, rows, look.flank === 'east' ? 1 : -1);
      drawLugs(sketch, core, rows, look.flank, lugs);
    },
    ...extra
  });
};

const bestFlank = ({ ends }: FigureRequest): Flank =>
  cheaper(ends, 'east', 'west') === 'east' ? 'east' : 'west';

/** A control: its track as an arc, the wiper pointing to the middle lug. */
export const buildControl = (request: FigureRequest): Figure =>
  buildFlankFigure(request, {
    flank: bestFlank(request),
    picture: 11,
    minRow: 4.4,
    draw: (sketch, box, rows, away) => {
      const r = 5.1;
      const x = box.x + box.width / 2 - away * 0.2;
      const wiper = rows[1] ?? rows[0];
      const y = wiper ? wiper.y + wiper.height / 2 : box.y + box.height / 2;
      sketch.circle('part.body', x, y, r);
      const start = away === 1 ? 40 : 220;
      sketch.line('part.track', arcPoints(x, y, r * 0.68, start, start + 280));
      const tip = x + away * r * 0.5;
      sketch.line('part.line', [x - away * r * 0.3, y, tip, y]);
      sketch.line(
        'part.solid',
        [tip + away * 0.6, y, tip - away * 0.9, y - 0.8, tip - away * 0.9, y + 0.8],
        {
          closed: true
        }
      );
    }
  });

export const buildSpeaker = (request: FigureRequest): Figure =>
  buildFlankFigure(request, {
    flank: bestFlank(request),
    picture: 9,
    draw: (sketch, box, _rows, away) => {
      const near = away === 1 ? box.x + box.width - 0.6 : box.x + 0.6;
      const at = (out: number) => near - away * out;
      const y = box.y + box.height / 2;
      sketch.line(
        'part.body',
        [at(0), y - 1.8, at(2.6), y - 1.8, at(2.6), y + 1.8, at(0), y + 1.8],
        {
          closed: true
        }
      );
      sketch.line(
        'part.body',
        [at(2.6), y - 1.8, at(7.4), y - 4.6, at(7.4), y + 4.6, at(2.6), y + 1.8],
        {
          closed: true
        }
      );
    }
  });

export const buildAntenna = (request: FigureRequest): Figure =>
  buildFlankFigure(request, {
    flank: bestFlank(request),
    picture: 9,
    draw: (sketch, box, _rows, away) => {
      const x = box.x + box.width / 2 - away * 0.5;
      const y = box.y + box.height / 2;
      const near = away === 1 ? box.x + box.width : box.x;
      const top = box.y + 0.6;
      sketch.line('part.line', [near, y, x, y, x, top]);
      sketch.line('part.line', [x - 2.8, top, x, top + 3, x + 2.8, top]);
    }
  });

const isAnode = (name: string, ending?: string): boolean =>
  ending === 'cap' || /anode|2nd|hv|ultor/i.test(name);

/** The picture tube from its side: base and neck to the flank, anode button on the cone. */
export const buildPictureTube = (request: FigureRequest): Figure => {
  const { terminals, ends } = request;
  const anodes = terminals.filter(({ name, ending }) => isAnode(name, ending));
  const onTop = new Set(anodes.map(({ id }) => id));
  const top = ends.filter((end) => end.terminal !== null && onTop.has(end.terminal));
  const pins = terminals.filter(({ id }) => !onTop.has(id));
  const flank = cheaper(ends, 'west', 'east') === 'west' ? 'west' : 'east';
  const picture = 36;
  const buttonAt = (core: Box): { x: number; y: number } => ({
    x: flank === 'west' ? core.x + core.width - 13 : core.x + 13,
    y: core.y + 3.2
  });
  const lugs = lugWidth({ ...request, terminals: pins });
  return buildFlankFigure(
    { ...request, terminals: pins, ends: ends.filter((end) => !top.includes(end)) },
    {
      flank,
      picture,
      minRow: Math.max(4.4, 26 / Math.max(1, pins.length)),
      draw: (sketch, box, _rows, away) => {
        const middle = box.y + box.height / 2;
        const near = away === 1 ? box.x + box.width : box.x;
        const at = (out: number) => near - away * out;
        const half = Math.max(13, box.height / 2);
        sketch.line(
          'part.body',
          [
            at(0),
            middle - 3,
            at(11),
            middle - 3,
            at(27),
            middle - half,
            at(33),
            middle - half,
            at(35.5),
            middle - half * 0.5,
            at(36),
            middle,
            at(35.5),
            middle + half * 0.5,
            at(33),
            middle + half,
            at(27),
            middle + half,
            at(11),
            middle + 3,
            at(0),
            middle + 3
          ],
          { closed: true, round: 2 }
        );
        sketch.line('part.fine', [at(27.5), middle - half + 1.5, at(27.5), middle + half - 1.5]);
        const core = { ...box, x: away === 1 ? box.x : box.x - lugs, width: box.width + lugs };
        const button = buttonAt(core);
        const header = measureHeader(request.part);
        drawHeader(sketch, header, at(21.5), middle - header.height / 2 - 0.4);
        sketch.circle(
          'part.button',
          button.x,
          button.y,
          1.5,
          anodes[0] ? { terminal: anodes[0].id } : {}
        );
        top
          .filter((end) => end.mark)
          .forEach((end, index) => {
            const room = end.mark ? measureMark(end.mark, 'east') : null;
            if (end.mark && room)
              drawMark(
                sketch,
                end.mark,
                { x: button.x, y: button.y + index * room.pitch },
                away === 1 ? 'west' : 'east'
              );
          });
      }
    },
    {
      withoutHeader: true,
      addPorts: (ports: Port[], core) => {
        const button = buttonAt(core);
        const lines: PartEnd[] = top.filter((end) => !end.mark);
        lines.forEach((end, index) => {
          const x = button.x + (index - (lines.length - 1) / 2) * pitch.line;
          ports.push({
            end: end.id,
            x,
            y: 0,
            side: 'north',
            path: [
              { x, y: button.y },
              { x, y: 0 }
            ]
          });
        });
      }
    }
  );
};
