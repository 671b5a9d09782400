// Parts whose leads come out at two flanks, each lead at one of them: transformers, yokes, coils
// with taps. Neighbouring leads that belong to one winding stay on one flank.
import type { Id, Part, Terminal } from '#document/index.ts';
import { fitText, textWidthMm } from '../text-width.ts';
import { arcPoints, Sketch, type Box, type Figure, type Port } from './figure.ts';
import { drawHeader, measureHeader } from './header.ts';
import { toLane } from '../router/lanes.ts';
import type { PartEnd } from './part-end.ts';
import { costOf, endsByTerminal, type FigureRequest } from './request.ts';
import { row, rowRoom, type } from './sizes.ts';
import { leave, lineCount, stackDepth, stackHeight, stackPlaces } from './stack.ts';

type Flank = 'east' | 'west';
const nameLook = { size: type.pin, face: 'sans' } as const;
const widestName = 15;
const coil = 2.2;
const core = 2.4;

interface Lead {
  readonly terminal: Terminal;
  readonly ends: readonly PartEnd[];
}

/** Leads of one winding: joined by the part's electrical elements, else all that have none. */
export const groupWindings = (part: Part, terminals: readonly Terminal[]): Terminal[][] => {
  const group = new Map<Id, number>(terminals.map(({ id }, index) => [id, index]));
  let joined = false;
  for (const { from, to } of Object.values(part.elements ?? {})) {
    const [a, b] = [group.get(from), to === undefined ? undefined : group.get(to)];
    if (a === undefined || b === undefined || a === b) continue;
    joined = true;
    for (const [id, own] of group) if (own === Math.max(a, b)) group.set(id, Math.min(a, b));
  }
  // Nothing is said of the windings: neighbours two by two.
  if (!joined) terminals.forEach(({ id }, index) => group.set(id, Math.floor(index / 2)));
  // Leads of which nothing is said pair up with a neighbour of the same kind.
  const alone = terminals.filter(
    ({ id }) => [...group.values()].filter((own) => own === group.get(id)).length === 1
  );
  for (let index = 0; joined && index + 1 < alone.length; index += 2) {
    const [one, two] = [alone[index], alone[index + 1]];
    if (one && two) group.set(two.id, group.get(one.id) ?? 0);
  }
  const byGroup = new Map<number, Terminal[]>();
  for (const terminal of terminals) {
    const own = group.get(terminal.id) ?? 0;
    byGroup.set(own, [...(byGroup.get(own) ?? []), terminal]);
  }
  return [...byGroup.values()];
};

/** Which flank each winding takes: the one that its ends like better, none left empty by accident. */
const splitWindings = (windings: readonly (readonly Lead[])[]): Record<Flank, Lead[][]> => {
  const result: Record<Flank, Lead[][]> = { east: [], west: [] };
  const scored = windings.map((leads) => {
    const ends = leads.flatMap((lead) => lead.ends);
    return {
      leads: [...leads],
      lean: costOf(ends, 'west') - costOf(ends, 'east'),
      used: ends.length
    };
  });
  for (const { leads, lean, used } of scored) {
    const emptier = result.east.flat().length <= result.west.flat().length ? 'east' : 'west';
    result[used === 0 || lean === 0 ? emptier : lean > 0 ? 'east' : 'west'].push(leads);
  }
  return result;
};

const heightOf = (lead: Lead, flank: Flank): number =>
  rowRoom(Math.max(row.height, stackHeight(lead.ends, flank) + 0.6), lineCount(lead.ends));

const windingGap = 2.4;

const flankHeight = (windings: readonly Lead[][], flank: Flank): number =>
  windings.reduce(
    (sum, leads) => sum + leads.reduce((own, lead) => own + heightOf(lead, flank), 0),
    Math.max(0, windings.length - 1) * windingGap
  );

interface ColumnLook {
  /** Draws what stands between the windings. */
  readonly drawMiddle: (sketch: Sketch, box: Box) => void;
  readonly fixedFlank?: Flank;
  readonly middle?: number;
}

/** The figure of a part with windings at its flanks. */
export const buildColumnFigure = (request: FigureRequest, look: ColumnLook): Figure => {
  const { part, terminals, ends } = request;
  const byTerminal = endsByTerminal(ends);
  const windings = groupWindings(part, terminals).map((group) =>
    group.map((terminal): Lead => ({ terminal, ends: byTerminal.get(terminal.id) ?? [] }))
  );
  const split = look.fixedFlank
    ? { east: [], west: [], [look.fixedFlank]: windings }
    : splitWindings(windings);
  const nameWidth = (flank: Flank): number =>
    Math.max(
      0,
      ...split[flank]
        .flat()
        .map(({ terminal }) => textWidthMm(fitText(terminal.name, widestName, nameLook), nameLook))
    );
  const middle = look.middle ?? core;
  const flankWidth = (flank: Flank): number =>
    split[flank].length > 0 ? nameWidth(flank) + coil + 2.6 : 1.5;
  const coreWidth = flankWidth('west') + middle + flankWidth('east');
  const header = measureHeader(part);
  const depthOf = (flank: Flank): number => {
    const depth = Math.max(0, ...split[flank].flat().map((lead) => stackDepth(lead.ends, flank)));
    return depth > 0 ? depth + 0.5 : 0;
  };
  const over = Math.max(0, (header.width - coreWidth) / 2);
  const left = Math.max(depthOf('west'), over);
  const right = Math.max(depthOf('east'), over);
  const width = left + coreWidth + right;
  const inner = Math.max(flankHeight(split.west, 'west'), flankHeight(split.east, 'east'), 8);
  const box: Box = { x: left, y: header.height, width: coreWidth, height: inner + 1.6 };
  const sketch = new Sketch();
  const ports: Port[] = [];
  drawHeader(sketch, header, left + coreWidth / 2, 0);
  sketch.box('part.body', box, 0.8);
  const middleX = left + flankWidth('west');
  look.drawMiddle(sketch, { x: middleX, y: box.y + 1, width: middle, height: box.height - 2 });
  for (const flank of ['west', 'east'] as const) {
    let y = box.y + toLane((box.height - flankHeight(split[flank], flank)) / 2);
    const edge = flank === 'west' ? left : left + coreWidth;
    const away = flank === 'west' ? 1 : -1;
    const coilX = flank === 'west' ? middleX - 0.4 : middleX + middle + 0.4;
    for (const leads of split[flank]) {
      const top = y;
      for (const lead of leads) {
        const height = heightOf(lead, flank);
        const at = y + height / 2;
        const text = fitText(lead.terminal.name, widestName, nameLook);
        sketch.text('part.pin.name', text, edge + away * 1.3, at, {
          ...nameLook,
          anchor: flank === 'west' ? 'start' : 'end',
          layer: 'terminals',
          terminal: lead.terminal.id
        });
        sketch.circle('part.pin', edge, at, 0.65, {
          layer: 'terminals',
          terminal: lead.terminal.id
        });
        leave(
          sketch,
          ports,
          stackPlaces(lead.ends, flank, at),
          flank,
          edge,
          flank === 'west' ? 0 : width
        );
        y += height;
      }
      drawCoil(sketch, coilX, top + 1, y - 1, flank);
      y += windingGap;
    }
  }
  return { width, height: box.y + box.height, ports, items: sketch.items };
};

/** A winding as a column of half turns, open to the core. */
const drawCoil = (sketch: Sketch, x: number, from: number, to: number, flank: Flank): void => {
  const turns = Math.max(2, Math.round((to - from) / 2.2));
  const r = (to - from) / turns / 2;
  const points: number[] = [];
  for (let turn = 0; turn < turns; turn++) {
    const middle = from + r + turn * 2 * r;
    const side = flank === 'west' ? -1 : 1;
    points.push(
      ...arcPoints(0, middle, r, -90, 90, 22.5).map((value, index) =>
        index % 2 === 0 ? x + side * Math.min(1.3, 1.3 / r) * value : value
      )
    );
  }
  sketch.line('part.line', points);
};

/** A transformer: windings at the flanks of two core lines. */
export const buildTransformer = (request: FigureRequest): Figure =>
  buildColumnFigure(request, {
    drawMiddle: (sketch, { x, y, width, height }) => {
      for (const at of [x + width * 0.3, x + width * 0.7]) {
        sketch.line('part.plate', [at, y, at, y + height]);
      }
    }
  });

/** A deflection yoke: its windings around the neck. */
export const buildYoke = (request: FigureRequest): Figure =>
  buildColumnFigure(request, {
    fixedFlank: costOf(request.ends, 'east') < costOf(request.ends, 'west') ? 'east' : 'west',
    middle: 12,
    drawMiddle: (sketch, { x, y, width, height }) => {
      const middle = { x: x + width / 2, y: y + height / 2 };
      const r = Math.min(5.2, height / 2 - 0.5);
      sketch.circle('part.line.ring', middle.x, middle.y, r);
      sketch.circle('part.line.ring', middle.x, middle.y, r * 0.55);
      for (const turn of [0, 90, 180, 270]) {
        sketch.line(
          'part.plate',
          arcPoints(middle.x, middle.y, r * 0.78, turn - 26, turn + 26, 13)
        );
      }
    }
  });
