// A plug or its jack: the pin field in a shell, pins facing the wiring, the cable's mouth (or the
// mate) on the other flank. Wires that run on in the cable are gathered there under their numbers.
import { fitText, textWidthMm } from '../text-width.ts';
import type { Box, Figure, Port, Sketch } from './figure.ts';
import { drawTag, tagWidth } from './number-tag.ts';
import type { PartEnd } from './part-end.ts';
import { cheaper, endsByTerminal, type FigureRequest } from './request.ts';
import { buildRowFigure, type Row } from './row-figure.ts';
import { pitch, type } from './sizes.ts';

type Flank = 'east' | 'west';
const nameLook = { size: type.pin, face: 'mono' } as const;
const shell = 1.6;
const beforeTag = 1.4;
const afterTag = 1.6;

const otherFlank = (flank: Flank): Flank => (flank === 'east' ? 'west' : 'east');
const asFlank = (ends: readonly PartEnd[]): Flank =>
  cheaper(ends, 'east', 'west') === 'east' ? 'east' : 'west';

const isGather = (end: PartEnd): boolean => end.mark?.kind === 'gather';

const drawPins = (
  sketch: Sketch,
  core: Box,
  rows: readonly Row[],
  isPlug: boolean,
  pinFlank: Flank
): void => {
  const pinX = pinFlank === 'east' ? core.x + core.width - 2.2 : core.x + 2.2;
  const [from, to] =
    pinFlank === 'east' ? [core.x + 1, pinX - 1.6] : [pinX + 1.6, core.x + core.width - 1];
  for (const { terminal, y, height } of rows) {
    const middle = y + height / 2;
    const marks = { terminal: terminal.id, layer: 'terminals' } as const;
    sketch.circle(isPlug ? 'part.pin.male' : 'part.pin', pinX, middle, isPlug ? 0.95 : 1.2, marks);
    const text = fitText(terminal.name, to - from, nameLook);
    sketch.text('part.pin.name', text, (from + to) / 2, middle, { ...nameLook, ...marks });
  }
};

/** The stubs of gathered wires with their numbers, and the bar that they run into. */
const drawGathered = (
  sketch: Sketch,
  core: Box,
  rows: readonly Row[],
  ends: readonly PartEnd[],
  flank: Flank,
  depth: number
): void => {
  const way = flank === 'east' ? 1 : -1;
  const start = flank === 'east' ? core.x + core.width : core.x;
  const bar = start + way * (depth - 0.5);
  const byTerminal = endsByTerminal(ends);
  const spots: number[] = [];
  for (const { terminal, y, height } of rows) {
    const own = byTerminal.get(terminal.id) ?? [];
    own.forEach((end, index) => {
      const tag = end.mark?.tags[0];
      if (!tag) return;
      const at = y + height / 2 + (index - (own.length - 1) / 2) * pitch.gather;
      spots.push(at);
      sketch.line(`wire.${tag.band}`, [start, at, bar, at], { layer: 'wires', wire: tag.wire });
      drawTag(sketch, tag, start + way * (beforeTag + tagWidth(tag) / 2), at);
    });
  }
  const middle = core.y + core.height / 2;
  sketch.line('trunk', [bar, Math.min(middle, ...spots), bar, Math.max(middle, ...spots)], {
    layer: 'wires'
  });
};

/** The pin field of a plug or jack. */
export const buildPlug = (request: FigureRequest): Figure => {
  const { ends, part, terminals } = request;
  const mouths = ends.filter((end) => end.terminal === null);
  const mates = mouths.find((end) => end.id.startsWith('mates-'));
  const trunks = mouths.filter((end) => end !== mates);
  const gathered = ends.filter(isGather);
  const lines = ends.filter((end) => end.terminal !== null && !isGather(end));
  const first = mates ?? trunks[0];
  const mouthFlank = first ? asFlank([first]) : otherFlank(asFlank(lines));
  const trunkFlank = mates ? otherFlank(mouthFlank) : mouthFlank;
  const pinFlank = mates && trunks.length > 0 ? mouthFlank : otherFlank(mouthFlank);
  const widest = Math.max(2, ...terminals.map(({ name }) => textWidthMm(name, nameLook)));
  const depth =
    gathered.length === 0
      ? 0
      : beforeTag +
        afterTag +
        Math.max(...gathered.map((end) => tagWidth(end.mark?.tags[0] ?? { number: '', step: '' })));
  return buildRowFigure({
    request: { ...request, ends: [...lines, ...gathered] },
    coreWidth: Math.min(18, Math.max(9.5, widest + 6.6)),
    flankOf: (end) => (isGather(end) ? trunkFlank : pinFlank),
    extraDepth: {
      east: 0,
      west: 0,
      [mouthFlank]: mates ? shell : 0,
      ...(depth > 0 ? { [trunkFlank]: depth } : {})
    },
    draw: (sketch, core, rows) => {
      const x = mouthFlank === 'west' ? core.x - shell : core.x + core.width;
      const inset = Math.min(1.2, core.height / 6);
      const wide = { x, y: core.y + inset, width: shell, height: core.height - 2 * inset };
      if (mates) sketch.box('part.shell', wide, 0.3);
      sketch.box('part.plug', core, 1.4);
      drawPins(sketch, core, rows, part.kind === 'plug', pinFlank);
      if (gathered.length > 0) drawGathered(sketch, core, rows, gathered, trunkFlank, depth);
    },
    addPorts: (ports: Port[], core, width) => {
      const middle = core.y + core.height / 2;
      const add = (end: PartEnd, flank: Flank, offset: number, inner: number) => {
        const y = middle + offset;
        const x = flank === 'east' ? width : 0;
        const start = flank === 'east' ? core.x + core.width + inner : core.x - inner;
        ports.push({
          end: end.id,
          x,
          y,
          side: flank,
          path:
            start === x
              ? [{ x, y }]
              : [
                  { x: start, y },
                  { x, y }
                ]
        });
      };
      // Beside lines on the same flank the mouth keeps to the upper edge, clear of every row.
      if (mates) add(mates, mouthFlank, trunks.length > 0 ? 0.4 - core.height / 2 : 0, 0);
      trunks.forEach((end, index) => {
        add(end, trunkFlank, (index - (trunks.length - 1) / 2) * 3, Math.max(0, depth - 0.5));
      });
    }
  });
};
