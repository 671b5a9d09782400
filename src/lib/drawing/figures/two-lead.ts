// A part with two leads: its symbol between its ends, its reference and value above. Small, since
// it hangs between the terminals of others; both leads to one side where that is shorter.
import { textWidthMm } from '../text-width.ts';
import { Sketch, type Figure, type Port } from './figure.ts';
import { costOf, endsByTerminal, type FigureRequest } from './request.ts';
import { twoLead, type } from './sizes.ts';
import { leave, stackDepth, stackHeight, stackPlaces } from './stack.ts';
import { drawTwoLeadBody, halfLength } from './two-lead-symbol.ts';

const boldLook = { size: type.small, face: 'sans', bold: true } as const;
const plainLook = { size: type.small, face: 'sans' } as const;
const gap = 0.7;

/** The text above the symbol: reference in bold, value plain. */
const drawWords = (sketch: Sketch, request: FigureRequest, x: number, y: number): void => {
  const { reference, second, width } = wordsOf(request);
  const left = x - width / 2;
  sketch.text('component', reference, left, y, { ...boldLook, anchor: 'start' });
  const after = left + textWidthMm(reference, boldLook) + gap;
  sketch.text('component', second, after, y, { ...plainLook, anchor: 'start' });
};

const wordsOf = ({ part }: FigureRequest): { reference: string; second: string; width: number } => {
  const { reference } = part;
  const second = [part.type, part.value].filter(Boolean).join(' ') || (part.function ?? '');
  const tail = second === '' ? 0 : gap + textWidthMm(second, plainLook);
  return { reference, second, width: textWidthMm(reference, boldLook) + tail };
};

/** The figure of a part with two terminals. */
export const buildTwoLead = (request: FigureRequest): Figure => {
  const { part, terminals, ends } = request;
  const [first, second] = terminals;
  const byTerminal = endsByTerminal(ends);
  const a = (first && byTerminal.get(first.id)) ?? [];
  const b = (second && byTerminal.get(second.id)) ?? [];
  const sketch = new Sketch();
  const ports: Port[] = [];
  // The two ends may trade flanks: the cheaper way round.
  const straight = costOf(a, 'west') + costOf(b, 'east');
  const swapped = costOf(a, 'east') + costOf(b, 'west');
  const isSwapped = swapped < straight;
  const west = isSwapped ? b : a;
  const east = isSwapped ? a : b;
  const half = halfLength(part.kind);
  const tail = twoLead.lead;
  const symbol = 2 * (half + tail);
  const words = wordsOf(request).width;
  const top = type.small * 1.35;
  const height = Math.max(
    2 * twoLead.half + 1,
    stackHeight(west, 'west'),
    stackHeight(east, 'east')
  );
  const depthWest = stackDepth(west, 'west');
  const depthEast = stackDepth(east, 'east');
  const over = Math.max(0, (words - symbol) / 2);
  const left = Math.max(depthWest, over);
  const right = Math.max(depthEast, over);
  const width = left + symbol + right;
  const middle = { x: left + symbol / 2, y: top + height / 2 };
  drawWords(sketch, request, middle.x, top / 2);
  drawTwoLeadBody(sketch, part.kind, { ...middle, upright: false, reversed: isSwapped });
  for (const [flank, own] of [
    ['west', west],
    ['east', east]
  ] as const) {
    const edge = flank === 'west' ? left : left + symbol;
    const inner = flank === 'west' ? left + tail : left + symbol - tail;
    const outer = flank === 'west' ? 0 : width;
    const places = stackPlaces(own, flank, middle.y);
    leave(sketch, ports, places, flank, edge, outer);
    sketch.line('lead', [inner, middle.y, edge, middle.y]);
    const ys = places.map(({ y }) => y);
    if (ys.length > 1) sketch.line('lead', [edge, Math.min(...ys), edge, Math.max(...ys)]);
  }
  return { width, height: top + height, ports, items: sketch.items };
};

/** Whether a part is drawn by its symbol between two leads. */
export const isTwoLead = (kind: string, terminals: number): boolean =>
  terminals === 2 &&
  ['resistor', 'capacitor', 'coil', 'fuse', 'lamp', 'rectifier', 'crystal', 'switch'].includes(
    kind
  );
